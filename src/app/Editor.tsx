import regularUrl from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url';
import semiboldUrl from '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url';
import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import pkg from '../../package.json' with { type: 'json' };
import { bookOf } from '../editor/book.ts';
import { createSession } from '../editor/session.ts';
import { gearBook, searchKinds } from '../gear/index.ts';
import type { NewId } from '../kernel/ids.ts';
import { fail, ok } from '../kernel/result.ts';
import { planFileBytes } from '../plan/container.ts';
import { planRecord } from '../plan/plan.ts';
import { boxFamilies, deviceFamilies } from '../plan/ports.ts';
import type { OpenPlan } from '../storage/port.ts';
import { type OwnBookService, type Scheme, type Services, ServicesContext } from '../ui/services.ts';
import { PlanScreen } from '../ui/shell/PlanScreen.tsx';
import { startAssessor } from './assessor.ts';
import { fewestService } from './fewest.ts';
import { deliverFile, fileStem } from './files.ts';
import { pictureService } from './pictures.ts';
import { startRadio } from './radio.ts';
import { recallView, rememberView } from './view-memory.ts';

interface EditorProps {
  readonly open: OpenPlan;
  readonly notice: string;
  readonly scheme: Scheme;
  readonly setScheme: (s: Scheme) => void;
  readonly newId: NewId;
  readonly ownBook: OwnBookService;
  readonly onLeave: () => void;
}

const fontBytes = async (url: string): Promise<Uint8Array> =>
  new Uint8Array(await (await fetch(url)).arrayBuffer());

/** Ties an open plan to a session, the store, the engines and the screens. */
export const Editor = ({ open, notice, scheme, setScheme, newId, ownBook, onLeave }: EditorProps) => {
  const [session] = useState(() => {
    const s = createSession(open.plan, newId);
    s.set({ message: [notice, ...open.notices].filter(Boolean).join(' ') });
    return s;
  });
  const [radio] = useState(() => startRadio(session));
  const [fit] = useState(() => !recallView(session, open.planId));
  // The book follows the plan: its practice can be changed.
  const practice = useSyncExternalStore(
    session.subscribe,
    () => planRecord(session.getState().plan).practice,
  );
  const own = useSyncExternalStore(ownBook.subscribe, ownBook.get);
  const kinds = useMemo(() => [...gearBook(practice), ...own.kinds], [practice, own]);
  const book = useMemo(() => bookOf(kinds), [kinds]);

  useEffect(() => {
    const readOnly = (): boolean => open.saveState().state === 'read-only';
    session.set({ readOnly: readOnly() });
    const offs = [
      session.onTransaction((t, after) => {
        if (t.origin === 'user') open.append(t, after);
      }),
      open.onForeign((t) => session.applyForeign(t)),
      open.onSaveState(() => {
        if (session.getState().readOnly !== readOnly()) session.set({ readOnly: readOnly() });
      }),
      open.onNotice((text) => session.set({ message: text })),
      startAssessor(session),
      radio.stop,
      rememberView(session, open.planId),
    ];
    const leaving = (e: BeforeUnloadEvent): void => {
      if (open.saveState().state === 'failed') e.preventDefault();
    };
    const hidden = (): void => {
      if (document.visibilityState === 'hidden') void open.flush();
    };
    window.addEventListener('beforeunload', leaving);
    document.addEventListener('visibilitychange', hidden);
    return () => {
      for (const off of offs) off();
      window.removeEventListener('beforeunload', leaving);
      document.removeEventListener('visibilitychange', hidden);
    };
  }, [open, session, radio]);

  useEffect(() => {
    const name = (): void => {
      const p = planRecord(session.getState().plan);
      document.title = `${p.title || 'Untitled plan'} – Lampwright`;
    };
    name();
    return session.subscribe(name);
  }, [session]);

  const services = useMemo<Services>(
    () => ({
      session,
      book,
      ownBook,
      searchGear: (query, limit) =>
        searchKinds(kinds, query, {
          families: [
            'fixture',
            'stand',
            'grip',
            'rigging',
            ...boxFamilies,
            ...deviceFamilies,
            'charger',
            'pack',
            'source',
            'furniture',
            'vehicle',
          ],
          limit,
        }),
      radio,
      fewest: fewestService,
      saveState: () => open.saveState(),
      onSaveState: (l) => open.onSaveState(l),
      takeOver: async () => {
        const r = await open.takeOver();
        if (!r.ok) return fail(r.error);
        session.load(r.value);
        session.set({ readOnly: open.saveState().state === 'read-only' });
        return ok(undefined);
      },
      saveFile: () => {
        const { plan } = session.getState();
        const { bytes, sort } = planFileBytes(plan);
        return deliverFile(`${fileStem(planRecord(plan).title)}.plan.${sort}`, bytes, `application/${sort}`);
      },
      leave: onLeave,
      scheme,
      setScheme,
      deliver: async (name, bytes, mime) => {
        const r = await deliverFile(name, bytes, mime);
        if (!r.ok) session.set({ message: r.error.what });
        return r;
      },
      fonts: async () => ({ regular: await fontBytes(regularUrl), semibold: await fontBytes(semiboldUrl) }),
      pictures: pictureService,
      version: pkg.version,
      today: () => new Date().toLocaleDateString('en-CA'),
    }),
    [session, book, kinds, ownBook, radio, open, scheme, setScheme, onLeave],
  );

  return (
    <ServicesContext value={services}>
      <PlanScreen fitAtFirst={fit} />
    </ServicesContext>
  );
};
