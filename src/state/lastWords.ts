import * as v from 'valibot';

/** The part of `localStorage` that is used. */
export type KeptTexts = Pick<globalThis.Storage, 'getItem' | 'setItem' | 'removeItem'>;

const rowSchema = v.strictObject({
  id: v.string(),
  title: v.string(),
  savedAtMs: v.number(),
  text: v.string(),
});

/** A project as the storage keeps it; `text` is that of its project file. */
export type ProjectRow = Readonly<v.InferOutput<typeof rowSchema>>;

/**
 * What a page that goes still had to save. A database may drop a write when its page goes; a text in
 * `localStorage` is there when the call returns, so it stands in until the write is known to be done.
 */
export type LastWords = {
  readonly write: (row: ProjectRow) => void;
  /** What was left; undefined where nothing was, or nothing that can be read. */
  readonly read: () => ProjectRow | undefined;
  /** Clears what was left up to a moment, so that a write which ends late clears nothing newer. */
  readonly clearUpTo: (savedAtMs: number) => void;
};

/** The texts that the browser keeps for this page; undefined where it refuses them. */
export function pageTexts(): KeptTexts | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined;
  }
}

/** What `act` gives; undefined where the browser refuses: without last words the database is all there is. */
function tried<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}

/** Last words under a name among the kept texts. */
export function lastWordsIn(texts: KeptTexts | undefined, name: string): LastWords {
  const place = `${name} last words`;
  function read(): ProjectRow | undefined {
    const left = tried(() => JSON.parse(texts?.getItem(place) ?? 'null') as unknown);
    const row = v.safeParse(rowSchema, left);
    return row.success ? row.output : undefined;
  }
  return {
    read,
    write: (row) => tried(() => texts?.setItem(place, JSON.stringify(row))),
    clearUpTo: (savedAtMs) => {
      const left = read();
      if (left && left.savedAtMs <= savedAtMs) tried(() => texts?.removeItem(place));
    },
  };
}
