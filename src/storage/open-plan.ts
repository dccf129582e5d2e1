import { fail, ok, type Result } from '../kernel/result.ts';
import { applyChanges, isEmptyChange, type Transaction } from '../plan/change-set.ts';
import { PLAN_VERSION } from '../plan/file.ts';
import { emptyPlan, type Plan } from '../plan/plan.ts';
import { changesOf, differenceByValue, editOf, editsOf, entryOf } from './journal.ts';
import { Listeners } from './listeners.ts';
import { type LoadedPlan, loadPlan } from './load.ts';
import type { Head, Medium, Part } from './medium.ts';
import type { HeldLock, Platform } from './platform.ts';
import type { OpenPlan, SaveState } from './port.ts';
import { claimEpoch, partedCopy, writeBatch, writeNew } from './stored-plan.ts';
import { TabLink, YIELD_MS } from './tab-link.ts';
import { missingProblem, readProblem, writeProblem } from './words.ts';
import { type Queued, WriteQueue } from './write-queue.ts';

interface Reading {
  readonly loaded: LoadedPlan;
  readonly head: Head;
}

type Role = 'writer' | 'yielding' | 'follower' | 'newer' | 'closed';

/** An open plan: the writer of it, or a follower. The promises are in SPEC.md. */
export class StoredPlanHandle implements OpenPlan {
  readonly planId: string;
  readonly #medium: Medium;
  readonly #platform: Platform;
  readonly #tabs: TabLink;
  readonly #queue: WriteQueue;
  readonly #states = new Listeners<[SaveState]>();
  readonly #foreign = new Listeners<[Transaction, Plan]>();
  readonly #lateNotices = new Listeners<[string]>();
  #state: SaveState = { state: 'read-only', reason: 'other-tab' };
  #role: Role = 'follower';
  #loaded: LoadedPlan;
  #plan: Plan;
  /** Number of the last entry on the medium that this tab knows of. */
  #seq: number;
  #epoch: number | undefined;
  #lock: HeldLock | undefined;
  /** What other tabs say is dealt with one after the other. */
  #turn: Promise<unknown> = Promise.resolve();

  private constructor(medium: Medium, platform: Platform, planId: string) {
    this.planId = planId;
    this.#medium = medium;
    this.#platform = platform;
    this.#tabs = new TabLink(platform, planId);
    this.#queue = new WriteQueue(
      platform,
      (batch) => this.#write(batch),
      (event) => this.#wrote(event),
    );
    this.#loaded = { plan: emptyPlan, notices: [], newer: false, seq: 0, needsSnapshot: false, damaged: [] };
    this.#plan = emptyPlan;
    this.#seq = 0;
  }

  /** Opens a plan: as the writer where no other tab is, else as a follower. */
  static async open(medium: Medium, platform: Platform, planId: string): Promise<Result<OpenPlan>> {
    const handle = new StoredPlanHandle(medium, platform, planId);
    // Other tabs' words that come while loading wait for their turn.
    const opened = handle.#start();
    handle.#turn = opened;
    handle.#tabs.listen({
      entry: (entry) => void handle.#inTurn(() => handle.#catchUp(entry)),
      yield: () => void handle.#inTurn(() => handle.#yield()),
    });
    const outcome = await opened;
    if (!outcome.ok) handle.#tabs.close();
    return outcome.ok ? ok(handle) : outcome;
  }

  get plan(): Plan {
    return this.#plan;
  }

  get notices(): readonly string[] {
    return this.#loaded.notices;
  }

  saveState(): SaveState {
    return this.#state;
  }

  onSaveState(listener: (s: SaveState) => void): () => void {
    return this.#states.add(listener);
  }

  onForeign(listener: (t: Transaction, after: Plan) => void): () => void {
    return this.#foreign.add(listener);
  }

  onNotice(listener: (text: string) => void): () => void {
    return this.#lateNotices.add(listener);
  }

  append(transaction: Transaction, after: Plan): void {
    if (this.#role !== 'writer') throw new Error('an edit of a plan that is open read-only');
    this.#plan = after;
    if (isEmptyChange(transaction.changes)) return;
    // What has failed stays said until a write succeeds.
    if (this.#state.state !== 'failed') this.#say({ state: 'saving' });
    this.#queue.push({ edit: editOf(transaction), after });
  }

  flush(): Promise<void> {
    return this.#queue.flush();
  }

  async close(): Promise<void> {
    if (this.#role === 'closed') return;
    await this.#queue.flush();
    await this.#turn.catch(() => undefined);
    this.#role = 'closed';
    this.#queue.take();
    this.#lock?.release();
    this.#tabs.close();
  }

  async takeOver(): Promise<Result<Plan>> {
    if (this.#role === 'writer') return ok(this.#plan);
    if (this.#role === 'newer')
      return fail({
        what: 'This plan was saved by a newer version of the program.',
        todo: 'Update this program to change it.',
      });
    if (this.#tabs.hasLocks) {
      await this.#tabs.askToYield();
      const lock = await this.#tabs.steal();
      if (!lock)
        return fail({ what: 'Another window took the plan at the same moment.', todo: 'Try again.' });
      this.#hold(lock);
    }
    return this.#inTurn(() => this.#becomeWriter());
  }

  async #start(): Promise<Result<void>> {
    const first = await this.#read();
    if (!first.ok) return first;
    this.#take(first.value);
    if (this.#loaded.newer) {
      this.#role = 'newer';
      this.#say({ state: 'read-only', reason: 'newer-version' });
      return ok(undefined);
    }
    if (this.#tabs.hasLocks) {
      const lock = await this.#tabs.takeIfFree();
      if (!lock) {
        this.#follow();
        return ok(undefined);
      }
      this.#hold(lock);
    }
    const writer = await this.#becomeWriter();
    return writer.ok ? ok(undefined) : writer;
  }

  async #read(): Promise<Result<Reading>> {
    try {
      const stored = await this.#medium.read(this.planId);
      if (!stored) return fail(missingProblem(this.planId));
      const loaded = loadPlan(stored);
      return loaded.ok ? ok({ loaded: loaded.value, head: stored.head }) : loaded;
    } catch (error) {
      return fail(readProblem(error));
    }
  }

  /** Takes a fresh reading in place of what is known, and says what is different. */
  #take({ loaded, head }: Reading): void {
    const before = this.#plan;
    this.#loaded = loaded;
    this.#seq = head.seq;
    if (before === emptyPlan) {
      this.#plan = loaded.plan;
      return;
    }
    const { changes, plan } = differenceByValue(before, loaded.plan);
    this.#plan = plan;
    if (!isEmptyChange(changes))
      this.#foreign.tell({ label: 'Changes from another window', origin: 'other-tab', changes }, this.#plan);
  }

  /** Claims the epoch, then takes the newest plan: nothing can come between. */
  async #becomeWriter(): Promise<Result<Plan>> {
    let claimed: Head | undefined;
    try {
      claimed = await claimEpoch(this.#medium, this.planId);
      if (!claimed) return fail(missingProblem(this.planId));
      this.#epoch = claimed.epoch;
    } catch (error) {
      // The plan can be worked on all the same; the claim is tried again with the first write.
      this.#epoch = undefined;
      this.#role = 'writer';
      this.#say({ state: 'failed', ...writeProblem(error) });
      return ok(this.#plan);
    }
    if (claimed.seq !== this.#seq || this.#loaded.needsSnapshot) {
      const read = await this.#read();
      if (!read.ok) return read;
      this.#take(read.value);
    }
    if (this.#loaded.newer) {
      this.#role = 'newer';
      this.#say({ state: 'read-only', reason: 'newer-version' });
      return ok(this.#plan);
    }
    this.#role = 'writer';
    this.#say({ state: 'saved', atMs: claimed.savedAtMs });
    return ok(this.#plan);
  }

  #hold(lock: HeldLock): void {
    this.#lock = lock;
    void lock.lost.then(() => {
      if (this.#lock !== lock) return;
      this.#lock = undefined;
      void this.#inTurn(() => this.#stepDown());
    });
  }

  /** Another tab took the lock: what is queued is written if the epoch is still ours, then this tab follows. */
  async #stepDown(): Promise<void> {
    if (this.#role === 'closed' || this.#role === 'newer') return;
    this.#role = 'yielding';
    this.#say({ state: 'read-only', reason: 'other-tab' });
    await this.#queue.flush();
    await this.#part();
    this.#follow();
  }

  /** Follows, and waits for the writer to go away. */
  #follow(): void {
    this.#role = 'follower';
    this.#say({ state: 'read-only', reason: 'other-tab' });
    this.#tabs.wait(
      () => this.#role === 'follower',
      (lock) => {
        this.#hold(lock);
        void this.#inTurn(() => this.#becomeWriter());
      },
    );
  }

  async #write(batch: readonly Queued[]): Promise<'written' | 'refused'> {
    if (this.#epoch === undefined) {
      const claimed = await claimEpoch(this.#medium, this.planId);
      if (claimed?.seq === this.#seq) this.#epoch = claimed.epoch;
    }
    const nowMs = this.#platform.nowMs();
    const head =
      this.#epoch === undefined
        ? undefined
        : await writeBatch(this.#medium, this.planId, this.#epoch, batch, this.#loaded, nowMs);
    if (!head) {
      this.#refused();
      return 'refused';
    }
    this.#seq = head.seq;
    this.#loaded = { ...this.#loaded, needsSnapshot: false, damaged: [] };
    const edits = batch.map((q) => q.edit);
    this.#tabs.tellEntry(entryOf(this.planId, head.seq, edits));
    return 'written';
  }

  /** The epoch is old: another tab writes now. */
  #refused(): void {
    if (this.#role !== 'writer') return;
    this.#role = 'yielding';
    this.#say({ state: 'read-only', reason: 'other-tab' });
    const lock = this.#lock;
    this.#lock = undefined;
    lock?.release();
    void this.#inTurn(async () => {
      await this.#part();
      this.#follow();
    });
  }

  /** Keeps what could not be written any more as a plan of its own, then takes the newest plan. */
  async #part(): Promise<void> {
    const unsaved = this.#queue.take().at(-1);
    if (unsaved) {
      try {
        const { newPlanId, nowMs } = this.#platform;
        await writeNew(this.#medium, newPlanId(), partedCopy(unsaved.after), nowMs());
        this.#lateNotices.tell(
          'Another window took over this plan before the last changes here were saved. They are kept in a copy on the start page.',
        );
      } catch (error) {
        const { what, todo } = writeProblem(error);
        this.#lateNotices.tell(`Another window took over this plan. ${what} ${todo}`);
      }
    }
    const read = await this.#read();
    if (read.ok) this.#take(read.value);
  }

  #wrote(event: { readonly failed: unknown } | 'written'): void {
    if (this.#role !== 'writer') return;
    this.#say(
      event === 'written'
        ? { state: 'saved', atMs: this.#platform.nowMs() }
        : { state: 'failed', ...writeProblem(event.failed) },
    );
  }

  async #catchUp(entry: Part): Promise<void> {
    if (this.#role !== 'follower' || entry.seq <= this.#seq) return;
    const edits = entry.seq === this.#seq + 1 && entry.version === PLAN_VERSION ? editsOf(entry) : undefined;
    if (!edits) {
      const read = await this.#read();
      if (read.ok) this.#take(read.value);
      return;
    }
    this.#seq = entry.seq;
    for (const edit of edits) {
      const changes = changesOf(this.#plan, edit);
      if (isEmptyChange(changes)) continue;
      this.#plan = applyChanges(this.#plan, changes);
      this.#foreign.tell({ label: edit.label, origin: 'other-tab', changes }, this.#plan);
    }
  }

  async #yield(): Promise<void> {
    if (this.#role !== 'writer') return;
    this.#role = 'yielding';
    this.#say({ state: 'read-only', reason: 'other-tab' });
    await this.#queue.flush();
    this.#tabs.tellYielded();
    // The tab that asked may be gone by now.
    this.#platform.after(YIELD_MS * 2, () => {
      if (this.#role !== 'yielding' || !this.#lock) return;
      this.#role = 'writer';
      this.#say({ state: 'saved', atMs: this.#platform.nowMs() });
      void this.#queue.flush();
    });
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#turn.then(work, work);
    this.#turn = mine.catch(() => undefined);
    return mine;
  }

  #say(state: SaveState): void {
    this.#state = state;
    this.#states.tell(state);
  }
}
