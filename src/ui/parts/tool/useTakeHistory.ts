import { useSyncExternalStore } from 'react';
import type { TakeRecord } from '../../../core/practice/takeRecord.ts';
import type { TakeHistoryState } from '../../../state/takeHistory.ts';
import { useParts } from './parts.ts';

/** What is known of the open song's takes. */
export function useTakeHistoryState(): TakeHistoryState {
  const { takeHistory } = useParts();
  return useSyncExternalStore(takeHistory.subscribe, takeHistory.state);
}

/** The takes of the open song, the first one first. */
export function useTakeHistory(): readonly TakeRecord[] {
  return useTakeHistoryState().takes;
}
