import './ui/kit/theme.css';
import './ui/shell/shell.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { afterFirstUse, deviceMemoryGb, pageRest } from './app/afterFirstUse.ts';
import { createGivenFiles } from './app/givenFiles.ts';
import { createKeptApp } from './app/keptApp.ts';
import { createMidiDoor } from './app/midiDoor.ts';
import { soundOpener } from './app/openSound.ts';
import { createPlayback } from './app/playback.ts';
import { createPracticeTakes } from './app/practiceTakes.ts';
import { createSongs } from './app/songs.ts';
import { createSoundsAhead } from './audio/soundsAhead.ts';
import { ok } from './core/result.ts';
import type { ShelfPattern } from './core/rhythm/shelf.ts';
import { decodeShelfPattern } from './formats/patternFile.ts';
import { createAutosave, pageLife } from './state/autosave.ts';
import { pageTexts } from './state/lastWords.ts';
import { openingProject } from './state/opening.ts';
import { openingMarkIn } from './state/openingMark.ts';
import { followOtherPages, pageTalk, toldStorage } from './state/otherPages.ts';
import { openStorage } from './state/storage.ts';
import { createStore } from './state/store.ts';
import { createTakeHistory, randomTakeId } from './state/takeHistory.ts';
import { heardWith, withLatency } from './ui/parts/takes/latencies.ts';
import { createViewStore } from './ui/parts/tool/viewState.ts';
import { App } from './ui/shell/App.tsx';
import { PageGuard } from './ui/shell/PageGuard.tsx';
import { songsView } from './ui/songs/songsView.ts';

const PATTERN_FILES = import.meta.glob<unknown>('../patterns/*.json', {
  eager: true,
  import: 'default',
});

/** A song that is drawn at all is drawn by then; the wait ends later where the page is busy drawing it. */
const DRAWN_AFTER_MS = 200;

/** The shipped patterns; the tests hold every one of them, so one that can't be read is a program error. */
function shippedShelf(): ShelfPattern[] {
  return Object.entries(PATTERN_FILES).map(([file, json]) => {
    const read = decodeShelfPattern(json);
    if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.error)}`);
    return read.value;
  });
}

async function start(root: HTMLElement): Promise<void> {
  const shelf = shippedShelf();
  const talk = pageTalk('vampwright');
  const opened = await openStorage('vampwright');
  const storage = opened.ok ? ok(toldStorage(opened.value, talk)) : opened;
  const mark = openingMarkIn(pageTexts(), 'vampwright', () => Date.now());
  const opening = await openingProject(
    storage,
    shelf.map(({ pattern }) => pattern),
    mark,
  );
  const store = createStore(opening.project);
  const view = createViewStore(pageTexts());
  const autosave = createAutosave(store, opening.storage, pageLife(window));
  if (opening.storage.ok) followOtherPages(store, autosave, opening.storage.value, talk);
  const takeHistory = createTakeHistory({
    store,
    storage: opening.storage,
    talk: pageTalk('vampwright takes'),
    newTakeId: randomTakeId,
  });
  const sounds = createSoundsAhead({ rest: pageRest, memoryGb: deviceMemoryGb() });
  afterFirstUse(window, sounds.begin);
  const openSound = soundOpener(sounds.at);
  const often = (act: () => void) => {
    const watch = setInterval(act, 60);
    return () => clearInterval(watch);
  };
  let isUndrawn = false;
  const endMark = () => {
    if (!isUndrawn) mark.end();
  };
  const endWhenUp = () => setTimeout(endMark, DRAWN_AFTER_MS);
  window.addEventListener('pagehide', endMark);
  const playback = createPlayback({ store, openSound, often });
  const midi = createMidiDoor({ taught: () => view.snapshot().taught });
  const hearing = createPracticeTakes({
    store,
    playback,
    openSound,
    often,
    nowMs: () => performance.now(),
    dateMs: () => Date.now(),
    keyTarget: window,
    openMidi: midi.openPlayed,
    heardWith: () => heardWith(view.snapshot()),
    keep: takeHistory.keep,
    onMeasured: (kind, sec) => view.set(withLatency(view.snapshot(), kind, 1000 * sec)),
  });
  const { onOpened, onDeleted } = songsView(view);
  const songs = createSongs({
    store,
    storage: opening.storage,
    playback,
    nowMs: () => Date.now(),
    onOpened: () => {
      isUndrawn = false;
      mark.begin();
      onOpened();
      endWhenUp();
    },
    onDeleted: (id) => {
      onDeleted(id);
      takeHistory.forget(id);
    },
  });
  const keptApp = createKeptApp({
    // While developing, what is kept would hide what was just changed.
    workers: import.meta.env.PROD ? navigator.serviceWorker : undefined,
    workerUrl: 'offlineWorker.js',
    rest: pageRest,
    reload: () => location.reload(),
  });
  createRoot(root, {
    onUncaughtError: (error) => {
      isUndrawn = true;
      console.error(error);
    },
    onCaughtError: (error, { errorBoundary }) => {
      if (errorBoundary instanceof PageGuard) isUndrawn = true;
      console.error(error);
    },
  }).render(
    <StrictMode>
      <App
        parts={{
          store,
          playback,
          view,
          shelf,
          autosave,
          songs,
          opening,
          midi,
          takeHistory,
          keptApp,
          givenFiles: createGivenFiles(),
          ...hearing,
        }}
      />
    </StrictMode>,
  );
  endWhenUp();
}

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no root');
void start(root);
