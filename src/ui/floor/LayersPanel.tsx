import { LABEL_FIELDS, type LabelField } from '../../drawing/context.ts';
import type { DrawingLayer } from '../../drawing/display-list.ts';
import { type LayerState, withLayer } from '../../editor/floor-view.ts';
import { CoverageLegend } from '../control/CoverageLegend.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { LAYER_WORDS } from './layer-words.ts';

const SHOWN: readonly DrawingLayer[] = [
  'gear',
  'labels',
  'cables',
  'data',
  'beams',
  'stands',
  'set',
  'notes',
  'dimensions',
  'architecture',
  'underlay',
  'coverage',
];

const FIELD_WORDS: Readonly<Record<LabelField, string>> = {
  kind: 'kind',
  use: 'use',
  gel: 'gel',
  channel: 'channel',
  watts: 'watts',
  power: 'circuit',
  address: 'address',
  height: 'height',
};

const STATES: readonly { readonly key: keyof LayerState; readonly word: string }[] = [
  { key: 'shown', word: 'show' },
  { key: 'faded', word: 'fade' },
  { key: 'locked', word: 'lock' },
];

const LayerStates = () => {
  const { session } = useServices();
  const view = useSessionSlice((s) => s.floorView);
  return (
    <details className="layers">
      <summary>Layers and labels</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Layer</th>
            {STATES.map((s) => (
              <th key={s.key} scope="col">
                {s.word}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {SHOWN.map((layer) => (
            <tr key={layer}>
              <th scope="row">{LAYER_WORDS[layer]}</th>
              {STATES.map((s) => (
                <td key={s.key}>
                  <input
                    type="checkbox"
                    aria-label={`${s.word} ${LAYER_WORDS[layer].toLowerCase()}`}
                    checked={view.layers[layer][s.key]}
                    onChange={(e) =>
                      session.set({
                        floorView: withLayer(session.getState().floorView, layer, {
                          [s.key]: e.target.checked,
                        }),
                      })
                    }
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <fieldset>
        <legend>Labels of units say</legend>
        {LABEL_FIELDS.map((f) => (
          <label key={f}>
            <input
              type="checkbox"
              checked={view.labelFields.includes(f)}
              onChange={(e) => {
                const now = session.getState().floorView;
                const labelFields = LABEL_FIELDS.filter((x) =>
                  x === f ? e.target.checked : now.labelFields.includes(x),
                );
                session.set({ floorView: { ...now, labelFields } });
              }}
            />
            {FIELD_WORDS[f]}
          </label>
        ))}
      </fieldset>
      <label>
        <input
          type="checkbox"
          checked={view.rooms}
          onChange={(e) =>
            session.set({ floorView: { ...session.getState().floorView, rooms: e.target.checked } })
          }
        />
        area and inside measures of rooms
      </label>
      <label>
        <input
          type="checkbox"
          checked={view.fields}
          onChange={(e) =>
            session.set({ floorView: { ...session.getState().floorView, fields: e.target.checked } })
          }
        />
        fields, and where beams fall on the floor
      </label>
      <label>
        <input
          type="checkbox"
          checked={view.ghosts}
          onChange={(e) =>
            session.set({ floorView: { ...session.getState().floorView, ghosts: e.target.checked } })
          }
        />
        places in the other setups, faintly
      </label>
    </details>
  );
};

/** What of the drawing is shown, faded and locked on this screen, and what labels say; and the legend of a coverage picture. */
export const LayersPanel = () => (
  <>
    <LayerStates />
    <CoverageLegend />
  </>
);
