/** A file that was given somewhere in the tool, on its way to the page that it belongs to. The functions need no `this`. */
export type GivenFiles = {
  readonly subscribe: (listener: () => void) => () => void;
  /** The file that waits, if one does. */
  readonly waiting: () => File | undefined;
  readonly give: (file: File) => void;
  /** Takes the file that waits; nobody else gets it. */
  readonly take: () => File | undefined;
};

/** Where one file at a time can wait. */
export function createGivenFiles(): GivenFiles {
  const listeners = new Set<() => void>();
  let file: File | undefined;
  const set = (next: File | undefined) => {
    file = next;
    for (const listener of listeners) listener();
  };
  return {
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    waiting: () => file,
    give: set,
    take() {
      const taken = file;
      if (taken) set(undefined);
      return taken;
    },
  };
}
