import './bandImport.css';
import { useRef } from 'react';
import { BandPanel } from './BandPanel.tsx';
import type { BandFile } from './bandFile.ts';
import { bandFileSentence } from './bandMessages.ts';

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
        accept=".mid,.midi,.rmi,.kar,audio/midi"
        hidden
        aria-label="MIDI file"
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) onFile(file);
          event.target.value = '';
        }}
      />
    </>
  );
}

/** Where a band comes in: a MIDI file is chosen or dropped, and its tracks become a pattern for two hands. */
export function BandPage({ file, fileCount, onFile, onClose }: Props) {
  return (
    <div className="band-page">
      <div className="band-head">
        <h2>Bring in a band</h2>
        {file?.kind === 'opened' && <span className="band-file">{file.name}</span>}
        <span className="pattern-space" />
        <FileButton label={file ? 'Another MIDI file …' : 'Choose a MIDI file …'} onFile={onFile} />
        <button type="button" onClick={onClose}>
          Back to the pattern
        </button>
      </div>
      {file?.kind === 'opened' && (
        <BandPanel key={fileCount} opened={file.opened} name={file.name} onDone={onClose} />
      )}
      {file?.kind === 'refused' && (
        <p role="alert" className="band-problem">
          <b>{file.fileName}</b> {bandFileSentence(file.error)} Your song is as it was.
        </p>
      )}
      {file?.kind !== 'opened' && (
        <p className="band-drop">
          Drop a MIDI file of a band here, or choose one. Bass and kick become the left hand;
          picking, strumming and snare the right. Nothing leaves this device.
        </p>
      )}
    </div>
  );
}
