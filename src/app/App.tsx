import { useCallback, useEffect, useState } from 'react';
import { demoPlans } from '../../demo-sets/index.ts';
import { idMaker } from '../kernel/ids.ts';
import { problemText, type Result } from '../kernel/result.ts';
import { type NewPlan, newPlan } from '../plan/edits/new-plan.ts';
import { type ReadPlan, readPlan } from '../plan/file.ts';
import type { Plan } from '../plan/plan.ts';
import { browserStore, memoryStore } from '../storage/browser.ts';
import { browserGearStore, noGearStore } from '../storage/gear-store.ts';
import type { OpenPlan, StoredPlanInfo } from '../storage/port.ts';
import { openReadOnly } from '../storage/read-only.ts';
import type { OwnBookService, Scheme } from '../ui/services.ts';
import { StartPage } from '../ui/start/StartPage.tsx';
import { Editor } from './Editor.tsx';
import { choosePlan, deliverFile, readPlanOf } from './files.ts';
import { openOwnBook } from './own-book.ts';

/** Where the browser gives no storage, plans last as long as the page, and the start page says so. */
const hasStorage = typeof indexedDB !== 'undefined';
const store = hasStorage ? browserStore() : memoryStore();
export const newId = idMaker(() => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) / 2 ** 32);

const planIdFromAddress = (): string | undefined => /^#\/plan\/([\w-]+)$/.exec(location.hash)?.[1];

const storedScheme = (): Scheme => {
  const kept = localStorage.getItem('lampwright.scheme');
  if (kept === 'bench' || kept === 'truck') return kept;
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'truck' : 'bench';
};

/** Start page or open plan. The address carries which, so that a reload comes back to the same plan. */
export const App = () => {
  const [open, setOpen] = useState<OpenPlan | undefined>(undefined);
  const [recent, setRecent] = useState<readonly StoredPlanInfo[]>([]);
  const [removed, setRemoved] = useState<readonly StoredPlanInfo[]>([]);
  const [broken, setBroken] = useState<string | undefined>(undefined);
  const [message, setMessage] = useState(
    hasStorage
      ? ''
      : 'This browser keeps nothing: plans last only while the page is open. Save to a plan file.',
  );
  const [busy, setBusy] = useState(planIdFromAddress() !== undefined);
  const [scheme, setSchemeState] = useState<Scheme>(storedScheme);
  const [ownBook, setOwnBook] = useState<OwnBookService | undefined>(undefined);

  useEffect(() => {
    document.documentElement.dataset.scheme = scheme;
    localStorage.setItem('lampwright.scheme', scheme);
  }, [scheme]);

  const refresh = useCallback(async () => {
    try {
      const [kept, bin] = await Promise.all([store.list(), store.listRemoved()]);
      setRecent(kept);
      setRemoved(bin);
    } catch (cause) {
      setMessage(
        `This browser does not let the program keep plans (${cause instanceof Error ? cause.message : 'unknown error'}). Save to a plan file.`,
      );
    }
  }, []);

  const show = useCallback((o: OpenPlan) => {
    // A plan that is only looked at is in no store, so a reload could not come back to it.
    if (o.saveState().state !== 'read-only' || o.planId !== 'newer-file')
      history.replaceState(null, '', `#/plan/${o.planId}`);
    setMessage('');
    setOpen(o);
  }, []);

  const openStored = useCallback(
    async (planId: string) => {
      setBusy(true);
      const r = await store.open(planId);
      if (r.ok) show(r.value);
      else {
        setMessage(problemText(r.error));
        setBroken(planId);
        history.replaceState(null, '', location.pathname);
      }
      setBusy(false);
    },
    [show],
  );

  const create = useCallback(
    async (plan: Plan, notices: readonly string[] = []) => {
      setBusy(true);
      const r = await store.create(plan);
      if (r.ok) {
        show(r.value);
        if (notices.length > 0) setMessage(notices.join('\n'));
      } else setMessage(problemText(r.error));
      setBusy(false);
    },
    [show],
  );

  useEffect(() => {
    const planId = planIdFromAddress();
    if (planId) void openStored(planId);
    void refresh();
    void openOwnBook(hasStorage ? browserGearStore() : noGearStore).then(setOwnBook);
  }, [openStored, refresh]);

  const openRead = async (read: Result<ReadPlan | undefined>): Promise<void> => {
    if (!read.ok) return setMessage(problemText(read.error));
    if (!read.value) return;
    if (read.value.newer) return show(openReadOnly('newer-file', read.value.plan, read.value.notices));
    await create(read.value.plan, read.value.notices);
  };

  const openDemo = async (slug: string): Promise<void> => {
    const demo = demoPlans.find((d) => d.slug === slug);
    if (!demo) return;
    setBusy(true);
    const read = readPlan(JSON.stringify(await demo.load()), demo.title);
    if (read.ok) await create(read.value.plan, read.value.notices);
    else {
      setMessage(problemText(read.error));
      setBusy(false);
    }
  };

  if (open && ownBook) {
    return (
      <Editor
        key={open.planId}
        open={open}
        notice={message}
        scheme={scheme}
        setScheme={setSchemeState}
        newId={newId}
        ownBook={ownBook}
        onLeave={async () => {
          await open.close();
          history.replaceState(null, '', location.pathname);
          setMessage('');
          setOpen(undefined);
          await refresh();
        }}
      />
    );
  }
  return (
    <StartPage
      demos={demoPlans}
      recent={recent}
      message={message}
      busy={busy}
      removed={removed}
      scheme={scheme}
      onScheme={setSchemeState}
      onDemo={(slug) => void openDemo(slug)}
      onOpenStored={(id) => void openStored(id)}
      onOpenFile={async () => openRead(await choosePlan())}
      onDropFile={async (file) => openRead(await readPlanOf(file))}
      onNew={(p: NewPlan) => void create(newPlan(p, newId))}
      onRemove={async (id) => {
        const r = await store.remove(id);
        if (!r.ok) return setMessage(problemText(r.error));
        await refresh();
      }}
      onRestore={async (id) => {
        const r = await store.restore(id);
        if (!r.ok) setMessage(problemText(r.error));
        await refresh();
      }}
      salvageable={broken !== undefined}
      onSalvage={async () => {
        const r = broken === undefined ? undefined : await store.salvage(broken);
        if (r?.ok) await deliverFile('kept-of-the-plan.json', r.value, 'application/json');
        else if (r) setMessage(problemText(r.error));
      }}
    />
  );
};
