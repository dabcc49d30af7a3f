import { useEffect, useState } from 'react';
import { setClick } from '../state/edits/practice.ts';
import { commandOf, type KeyCommand } from './keyBindings.ts';
import { HandsPage } from './keyboard/HandsPage.tsx';
import { keepMarksInPlace } from './marksInPlace.ts';
import { type Parts, PartsContext, useParts } from './parts.ts';
import { RhythmPage } from './patternGrid/RhythmPage.tsx';
import { playRequestOf } from './playRequest.ts';
import { DrillPage } from './practice/DrillPage.tsx';
import { goToRungBeside } from './practice/goToRung.ts';
import { goToSectionBeside } from './practice/goToSection.ts';
import { PlayPage } from './practice/PlayPage.tsx';
import { Foot, speedChanged } from './shell/Foot.tsx';
import { Head } from './shell/Head.tsx';
import { KeysAndCautions } from './shell/KeysAndCautions.tsx';
import { Message } from './shell/Message.tsx';
import { PageGuard } from './shell/PageGuard.tsx';
import { RestReminder } from './shell/RestReminder.tsx';
import { MapPage } from './songMap/MapPage.tsx';
import { SongsSheet } from './songs/SongsSheet.tsx';
import { usePlayback, useView } from './useProject.ts';
import { useWakeLock } from './useWakeLock.ts';
import { mixLevels, type Page, type Theme } from './viewState.ts';

const PAGE_VIEWS: Readonly<Record<Page, () => React.JSX.Element>> = {
  map: MapPage,
  hands: HandsPage,
  rhythm: RhythmPage,
  drill: DrillPage,
  play: PlayPage,
};

/** Elements in which a key means what is typed or chosen there. */
const TAKES_KEYS =
  'input:not([type=range]):not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable], dialog[open]';

/** Elements in which arrows, Home and the page keys move within. */
const MOVES_WITHIN =
  'input, [role=grid], [role=toolbar], [role=menu], [role=radiogroup], [role=tablist], [popover]';

const MOVES = /^(Arrow|Page|Home)/;

const DARK = '(prefers-color-scheme: dark)';

function useTheme(): Theme {
  const chosen = useView((state) => state.theme);
  const [isDark, setDark] = useState(() => matchMedia(DARK).matches);
  useEffect(() => {
    const query = matchMedia(DARK);
    const change = () => setDark(query.matches);
    query.addEventListener('change', change);
    return () => query.removeEventListener('change', change);
  }, []);
  if (chosen !== 'as the device') return chosen;
  return isDark ? 'stage' : 'paper';
}

/** What each key command does, by kind. */
function carryOut(command: KeyCommand, parts: Parts): void {
  const { store, playback, view } = parts;
  switch (command.kind) {
    case 'play-or-stop':
      if (playback.state().status === 'stopped') void playback.play(playRequestOf(store, view));
      else playback.stop();
      break;
    case 'undo':
      store.undo();
      break;
    case 'redo':
      store.redo();
      break;
    case 'page':
      view.set({ page: command.page });
      break;
    case 'slower':
      view.set(speedChanged(view.snapshot().speedPercent, -5));
      break;
    case 'faster':
      view.set(speedChanged(view.snapshot().speedPercent, 5));
      break;
    case 'rung':
      goToRungBeside(parts, command.by);
      break;
    case 'section':
      goToSectionBeside(parts, command.by);
      break;
    case 'click': {
      const { click } = store.snapshot().practice;
      store.edit(setClick({ on: !click.on }), { label: 'click' });
      break;
    }
  }
}

/** One listener for all keys of the table; keys that a text, a grid or a dialog has used are left alone. */
function useKeys(): void {
  const parts = useParts();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const command = commandOf(event, parts.view.snapshot().page);
      const target = event.target instanceof Element ? event.target : null;
      const isUndo = command?.kind === 'undo' || command?.kind === 'redo';
      if (!command || event.defaultPrevented) return;
      if (target?.closest(TAKES_KEYS) && !(isUndo && !target.closest('input, textarea'))) return;
      if (MOVES.test(event.key) && target?.closest(MOVES_WITHIN)) return;
      if (event.key === ' ' && target?.closest('button, a, summary')) return;
      event.preventDefault();
      carryOut(command, parts);
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [parts]);
}

/** What is typed or dragged in a field is one change until the field is left. */
function useGestureEnds(): void {
  const { store } = useParts();
  useEffect(() => {
    addEventListener('focusout', store.endGesture);
    return () => removeEventListener('focusout', store.endGesture);
  }, [store]);
}

/** A file that is dropped beside the places for files must not make the browser leave the song for it. */
function useDropGuard(): void {
  useEffect(() => {
    const guard = (event: DragEvent) => event.preventDefault();
    addEventListener('dragover', guard);
    addEventListener('drop', guard);
    return () => {
      removeEventListener('dragover', guard);
      removeEventListener('drop', guard);
    };
  }, []);
}

/** Hands this device's volumes, speed, arrangement and how often to the playback, as they are and whenever they change. */
function usePlaybackSettings(): void {
  const { playback } = useParts();
  const volumes = useView((state) => state.volumes);
  const speed = useView((state) => state.speedPercent);
  useEffect(() => playback.setVolumes(mixLevels(volumes)), [playback, volumes]);
  const arrangement = useView((state) => state.arrangement);
  useEffect(
    () => playback.setManner({ speedPercent: speed, arrangement }),
    [playback, speed, arrangement],
  );
  const times = useView((state) => state.times);
  useEffect(() => playback.setTimes(times), [playback, times]);
}

function Sheet() {
  const parts = useParts();
  const { store, playback, view } = parts;
  const theme = useTheme();
  const page = useView((state) => state.page);
  const [showsSongs, setShowsSongs] = useState(false);
  const [showsKeys, setShowsKeys] = useState(false);
  useKeys();
  useDropGuard();
  useGestureEnds();
  usePlaybackSettings();
  useWakeLock(usePlayback().status === 'playing');
  useEffect(() => keepMarksInPlace(parts), [parts]);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  const View = PAGE_VIEWS[page];
  return (
    <div className="app">
      <Head
        theme={theme}
        onShowSongs={() => setShowsSongs(true)}
        onShowKeys={() => setShowsKeys(true)}
      />
      <main className="page" id={`page-${page}`}>
        <PageGuard key={page} onUndo={store.undo}>
          <View />
        </PageGuard>
      </main>
      <div>
        <Message />
        <RestReminder />
        <Foot onPlay={() => void playback.play(playRequestOf(store, view))} />
      </div>
      <SongsSheet open={showsSongs} onClose={() => setShowsSongs(false)} />
      <KeysAndCautions open={showsKeys} onClose={() => setShowsKeys(false)} />
    </div>
  );
}

/** The whole tool on one sheet. */
export function App({ parts }: { readonly parts: Parts }) {
  return (
    <PartsContext value={parts}>
      <Sheet />
    </PartsContext>
  );
}
