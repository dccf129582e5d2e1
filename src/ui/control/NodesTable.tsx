import { recordOf } from '../../plan/plan.ts';
import { networkOf } from '../../report/control.ts';
import type { Finding } from '../../report/types.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { isSet, PortCell } from './DeviceRows.tsx';
import { FindingSigns } from './FindingSigns.tsx';

const kbps = (n: number): string =>
  n >= 1000 ? `${(n / 1000).toFixed(2)} Mbit/s` : `${n.toFixed(1)} kbit/s`;

/** Desks, nodes, splitters and links port by port, and every universe as the network carries it. */
export const NodesTable = ({ about }: { readonly about: ReadonlyMap<string, readonly Finding[]> }) => {
  const { session } = useServices();
  const { plan, readOnly, selection } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    selection: s.selection,
  }));
  const net = networkOf(plan);
  return (
    <>
      <section aria-label="Nodes and ports">
        <div className="lines-head">
          <h2>Nodes and ports</h2>
          <span className="soft">{net.nodes.length} pieces of control gear</span>
        </div>
        {net.nodes.length === 0 ? (
          <p className="soft">
            No control gear yet. Desks, nodes, splitters, transmitters and receivers are in the gear list of
            the floor.
          </p>
        ) : (
          <table className="table nodes">
            <thead>
              <tr>
                <th scope="col">Device</th>
                <th scope="col">Port</th>
                <th scope="col">Universes</th>
                <th scope="col">Lines</th>
                <th scope="col" className="num">
                  Bandwidth
                </th>
                <th scope="col">Findings</th>
              </tr>
            </thead>
            {net.nodes.map((n) => {
              const device = recordOf(plan, 'device', n.deviceId);
              if (!device) return null;
              const ports = n.ports.length > 0 ? n.ports : [undefined];
              return (
                <tbody key={n.deviceId} className={selection.has(n.deviceId) ? 'chosen' : undefined}>
                  {ports.map((p, i) => (
                    <tr key={p ? `${p.side}-${p.port.id}` : 'none'}>
                      {i === 0 ? (
                        <th scope="rowgroup" rowSpan={ports.length}>
                          <button
                            type="button"
                            className="link"
                            onClick={() => session.set({ selection: new Set([n.deviceId]) })}
                          >
                            {n.label}
                          </button>
                          <span className="nodes-kind soft">{n.kindName}</span>
                        </th>
                      ) : null}
                      <td>{p?.words ?? 'no data ports'}</td>
                      <td>
                        {p && isSet(n.family, p) ? (
                          <PortCell device={device} port={p} disabled={readOnly || device.locked === true} />
                        ) : (
                          <span className="soft">
                            {p?.side === 'in'
                              ? 'in'
                              : n.family === 'dataSplitter'
                                ? 'what comes in'
                                : 'what it sends'}
                          </span>
                        )}
                      </td>
                      <td>
                        {p && p.lines.length > 0 ? p.lines.join(', ') : <span className="soft">none</span>}
                      </td>
                      {i === 0 ? (
                        <>
                          <td className="num" rowSpan={ports.length}>
                            {n.kbps > 0 ? kbps(n.kbps) : ''}
                          </td>
                          <td rowSpan={ports.length}>
                            <FindingSigns findings={about.get(n.deviceId) ?? []} />
                          </td>
                        </>
                      ) : null}
                    </tr>
                  ))}
                </tbody>
              );
            })}
          </table>
        )}
      </section>
      <section aria-label="Universes on the network">
        <div className="lines-head">
          <h2>Universes on the network</h2>
          <span className="soft">
            streaming ACN (ANSI E1.31), UDP port 5568, each sent whole at 44 Hz: {kbps(net.kbps)} in all,{' '}
            {net.sharePct.toFixed(1)} % of 100 Mbit/s (plan for no more than {net.advisedPct} %)
          </span>
        </div>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Universe</th>
              <th scope="col">Name</th>
              <th scope="col" className="num">
                sACN number
              </th>
              <th scope="col">Multicast group</th>
              <th scope="col" className="num">
                Bandwidth
              </th>
              <th scope="col">On ports of</th>
            </tr>
          </thead>
          <tbody>
            {net.universes.map((u) => (
              <tr key={u.id}>
                <th scope="row">U{u.number}</th>
                <td>{u.name}</td>
                <td className="num">{u.sacn}</td>
                <td className="num-left">{u.group}</td>
                <td className="num">{kbps(u.kbps)}</td>
                <td>{u.devices.length > 0 ? u.devices.join(', ') : <span className="soft">none</span>}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
};
