/** What a page asks of the worker: to look whether all is still kept, or to let a newer version take over. */
export type ToWorker = { readonly kind: 'check' } | { readonly kind: 'take-over' };

/** What the worker answers to `check`: whether every file of its version is kept as it was built. */
export type FromWorker = { readonly kind: 'checked'; readonly complete: boolean };
