import { type HandsQuestion, sectionHands } from '../core/voicing/sectionHands.ts';

/** Answers every question with the hands. */
function answerQuestions(): void {
  globalThis.addEventListener('message', ({ data }: MessageEvent<HandsQuestion>) =>
    globalThis.postMessage(sectionHands(data), {}),
  );
}

answerQuestions();
