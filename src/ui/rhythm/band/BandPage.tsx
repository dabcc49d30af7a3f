import './bandImport.css';
import { useRef } from 'react';
import { BandPanel } from './BandPanel.tsx';
import type { BandFile } from './bandFile.ts';
import { refusalSentence } from './bandMessages.ts';

type Props = {
  /** What came of the file that was given last; undefined before the first. */
  readonly file: BandFile | undefined;
  /** Tells one given file from the next, also where it is the same again. */
  readonly fileCount: number;
  readonly onFile: (file: File) => void;
  readonly onClose: () => void;
};

function FileButton({ label, onFile }: Pick<Props, 'onFile'> & { readonly label: string }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {label}
      </button>
      <input
        ref={input}
        type="file"
        accept=".mid,.midi,.rmi,.kar,audio/*,.wav,.mp3,.m4a,.ogg,.opus,.flac"
        hidden
        aria-label="Recording or MIDI file"
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) onFile(file);
          event.target.value = '';
        }}
      />
    </>
  );
}

/** Where a band comes in: a recording or a MIDI file is chosen or dropped, and becomes a pattern for two hands or a map. */
export function BandPage({ file, fileCount, onFile, onClose }: Props) {
  return (
    <div className="band-page">
      <div className="band-head">
        <h2>Bring in a band</h2>
        {file?.kind === 'opened' && <span className="band-file">{file.name}</span>}
        <span className="pattern-space" />
        <FileButton label={file ? 'Another file …' : 'Choose a file …'} onFile={onFile} />
        <button type="button" onClick={onClose}>
          Back to the pattern
        </button>
      </div>
      {file?.kind === 'opened' && (
        <BandPanel key={fileCount} opened={file.opened} name={file.name} onDone={onClose} />
      )}
      {file?.kind === 'refused' && (
        <p role="alert" className="band-problem">
          <b>{file.fileName}</b> {refusalSentence(file.error)} Your song is as it was.
        </p>
      )}
      {file?.kind === 'listening' && (
        <div className="band-listening">
          <p role="status">
            Listening to <b>{file.fileName}</b>: beats, drums, bass line, chords.
          </p>
          <progress value={file.share} aria-label="How much was heard" />
          <button type="button" onClick={file.giveUp}>
            Give up
          </button>
        </div>
      )}
      {file?.kind !== 'opened' && file?.kind !== 'listening' && (
        <p className="band-drop">
          Drop a recording or a MIDI file of a band here, or choose one. Bass and kick become the
          left hand; picking, strumming and snare the right. Nothing leaves this device.
        </p>
      )}
    </div>
  );
}
