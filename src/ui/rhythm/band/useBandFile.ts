import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { isSoundFile, listenTo } from '../../../app/recordings.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { type BandFile, readAs, readBandFile } from './bandFile.ts';

/** What was given last, and how many files were before it, which tells the same file given again from the first. */
type Given = { readonly file?: BandFile; readonly fileCount: number };

/** A band that is brought in: a MIDI file is read, a recording listened to until another file is given. */
export function useBandFile() {
  const { givenFiles } = useParts();
  const [given, setGiven] = useState<Given>();
  const giveUp = useRef<() => void>(undefined);
  useEffect(() => () => giveUp.current?.(), []);
  const next = (before: Given | undefined) => (before ? before.fileCount + 1 : 0);
  const show = (file: BandFile) => setGiven((before) => ({ file, fileCount: next(before) }));

  async function listen(file: File): Promise<void> {
    const onProgress = (share: number) =>
      setGiven((before) =>
        before?.file?.kind === 'listening'
          ? { ...before, file: { ...before.file, share } }
          : before,
      );
    const listening = listenTo(file, onProgress);
    giveUp.current = listening.giveUp;
    show({ kind: 'listening', fileName: file.name, share: 0, giveUp: listening.giveUp });
    const heard = await listening.result;
    if (giveUp.current !== listening.giveUp) return;
    giveUp.current = undefined;
    if (!heard.ok && heard.error.kind === 'given-up') setGiven({ fileCount: 0 });
    else show(readAs(file, heard));
  }

  const bringIn = useEffectEvent(async (file: File) => {
    giveUp.current?.();
    giveUp.current = undefined;
    if (isSoundFile(file)) await listen(file);
    else show(await readBandFile(file));
  });
  useEffect(() => {
    const takeWaiting = () => {
      const file = givenFiles.take();
      if (file) void bringIn(file);
    };
    takeWaiting();
    return givenFiles.subscribe(takeWaiting);
  }, [givenFiles]);

  return {
    given,
    /** Nothing is given yet: a place to choose or drop a file. */
    begin: () => setGiven({ fileCount: 0 }),
    close: () => {
      giveUp.current?.();
      setGiven(undefined);
    },
    give: givenFiles.give,
  };
}
