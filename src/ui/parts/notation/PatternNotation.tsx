import { lazy } from 'react';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { LazySheet } from './LazySheet.tsx';

const PatternSheet = lazy(async () => ({
  default: (await import('./PatternSheet.tsx')).PatternSheet,
}));

/** A pattern on the held chord as notation, as large as the room it is given; loaded when it is first shown. */
export function PatternNotation({ pattern }: { readonly pattern: Pattern }) {
  return (
    <LazySheet>
      <PatternSheet pattern={pattern} />
    </LazySheet>
  );
}
