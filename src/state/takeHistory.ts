import { type TakeRecord, withOtherId } from '../core/practice/takeRecord.ts';
import type { Project } from '../core/project.ts';
import type { Result } from '../core/result.ts';
import type { PageTalk } from './otherPages.ts';
import { rebornIds } from './rebornIds.ts';
import type { StorageError } from './rooms.ts';
import type { Store } from './store.ts';
import type { KeptTake, TakeId, TakeRoom } from './takeRoom.ts';

type SongId = Project['id'];

export type TakeHistoryState = {
  /** The takes of the open song, the first one first, without those that are crossed out. */
  readonly takes: readonly KeptTake[];
  /** Takes to be deleted, which can be put back until `deleteCrossedOut`. */
  readonly crossedOut: readonly KeptTake[];
  /** Why takes are not kept beyond this visit, or were not read, if so. */
  readonly problem?: StorageError;
};

/** The takes of the open song. The functions need no `this`. */
export type TakeHistory = {
  readonly state: () => TakeHistoryState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Keeps takes of a song. Where the storage fails they count for this visit, and are tried again with the next. */
  readonly keep: (songId: SongId, takes: readonly TakeRecord[]) => void;
  readonly crossOut: (ids: readonly TakeId[]) => void;
  readonly putBack: (ids: readonly TakeId[]) => void;
  readonly deleteCrossedOut: () => Promise<void>;
  /** Forgets what this visit knows of a song that was deleted. */
  readonly forget: (songId: SongId) => void;
};

export type TakeHistoryParts = {
  readonly store: Pick<Store, 'snapshot' | 'subscribe' | 'undoLabel'>;
  readonly storage: Result<TakeRoom, StorageError>;
  /** Tells other pages which song's takes have changed, and hears it from them. */
  readonly talk: PageTalk;
  /** A text that no other take has for its identity, on any page. */
  readonly newTakeId: () => TakeId;
};

/** A text of 128 random bits. */
export function randomTakeId(): TakeId {
  const bits = crypto.getRandomValues(new Uint32Array(4));
  return [...bits].map((each) => each.toString(16).padStart(8, '0')).join('');
}

function inOrder(takes: Iterable<KeptTake>): KeptTake[] {
  return [...takes].toSorted((a, b) => a.atMs - b.atMs || (a.id < b.id ? -1 : 1));
}

/**
 * Reads the takes of whichever song lies open, and those that another page adds to it. Where an edit gives
 * the id of a deleted pattern or section to a new one, the takes stay with what is gone.
 */
export function createTakeHistory(parts: TakeHistoryParts): TakeHistory {
  const { store, storage, talk, newTakeId } = parts;
  const listeners = new Set<() => void>();
  let songId = store.snapshot().id;
  let newIdsIn = rebornIds(store.snapshot());
  let known = new Map<TakeId, KeptTake>();
  let crossed: ReadonlySet<TakeId> = new Set();
  let problem = storage.ok ? undefined : storage.error;
  /** Takes by song that the storage does not have yet, or never will. */
  const unkept = new Map<SongId, readonly KeptTake[]>();
  let state: TakeHistoryState = shown();

  function shown(): TakeHistoryState {
    const all = inOrder(known.values());
    return {
      takes: all.filter(({ id }) => !crossed.has(id)),
      crossedOut: all.filter(({ id }) => crossed.has(id)),
      ...(problem && { problem }),
    };
  }

  function show(): void {
    state = shown();
    for (const listener of listeners) listener();
  }

  function unkeptOf(id: SongId): readonly KeptTake[] {
    return unkept.get(id) ?? [];
  }

  async function read(): Promise<void> {
    if (!storage.ok) return;
    const mine = songId;
    const kept = await storage.value.takes(mine, new Set(known.keys()));
    if (mine !== songId) return;
    problem = kept.ok ? undefined : kept.error;
    if (kept.ok) {
      const ids = new Set(kept.value.ids);
      const stays = [...known.values()].filter(({ id }) => ids.has(id));
      const all = [...stays, ...kept.value.takes, ...unkeptOf(mine)];
      known = new Map(all.map((take) => [take.id, take]));
    }
    show();
  }

  async function save(id: SongId): Promise<void> {
    if (!storage.ok) return;
    const saved = unkeptOf(id);
    const kept = await storage.value.saveTakes(id, saved);
    if (kept.ok && kept.value) {
      unkept.set(
        id,
        unkeptOf(id).filter((take) => !saved.includes(take)),
      );
      talk.tell(id);
    }
    problem = kept.ok ? undefined : kept.error;
    if (state.problem !== problem) show();
  }

  /** Takes of what had an id before get one that nothing else will have. */
  function leaveToTheGone(id: string): void {
    const gone = `${id} ${newTakeId()}`;
    const moved = [...known.values()].flatMap((take) => {
      const renamed = withOtherId(take, id, gone);
      return renamed === take ? [] : [{ ...renamed, id: take.id }];
    });
    if (moved.length === 0) return;
    for (const take of moved) known.set(take.id, take);
    const ids = new Set(moved.map((take) => take.id));
    unkept.set(songId, [...unkeptOf(songId).filter((take) => !ids.has(take.id)), ...moved]);
    show();
    void save(songId);
  }

  function follow(): void {
    const project = store.snapshot();
    const { id } = project;
    if (id === songId) {
      const reborn = newIdsIn(project);
      // What another page has edited comes without a history of edits.
      if (store.undoLabel() !== undefined) reborn.forEach(leaveToTheGone);
      return;
    }
    newIdsIn = rebornIds(project);
    songId = id;
    crossed = new Set();
    known = new Map(unkeptOf(id).map((take) => [take.id, take]));
    show();
    void read();
  }

  store.subscribe(follow);
  talk.onTold((id) => {
    if (id === songId) void read();
  });
  void read();

  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    keep(id, takes) {
      if (takes.length === 0) return;
      const added = takes.map((take) => ({ ...take, id: newTakeId() }));
      unkept.set(id, [...unkeptOf(id), ...added]);
      if (id === songId) {
        for (const take of added) known.set(take.id, take);
        show();
      }
      void save(id);
    },
    crossOut(ids) {
      crossed = new Set([...crossed, ...ids]);
      show();
    },
    putBack(ids) {
      crossed = new Set([...crossed].filter((id) => !ids.includes(id)));
      show();
    },
    async deleteCrossedOut() {
      const gone = state.crossedOut.map(({ id }) => id);
      if (gone.length === 0) return;
      const mine = songId;
      const isGone = ({ id }: KeptTake) => gone.includes(id);
      unkept.set(
        mine,
        unkeptOf(mine).filter((take) => !isGone(take)),
      );
      for (const id of gone) known.delete(id);
      crossed = new Set();
      show();
      const deleted = storage.ok ? await storage.value.deleteTakes(mine, gone) : undefined;
      if (deleted?.ok) talk.tell(mine);
      else await read();
    },
    forget(id) {
      unkept.delete(id);
    },
  };
}
