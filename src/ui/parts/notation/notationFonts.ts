import academicoUrl from '@vexflow-fonts/academico/academico.woff2?url';
import academicoBoldUrl from '@vexflow-fonts/academico/academico-bold.woff2?url';
import lelandUrl from '@vexflow-fonts/leland/leland.woff2?url';
import { Font, VexFlow } from 'vexflow/core';

/** The fonts notation is set in, as the engraving library and the style sheet name them. */
export const MUSIC_FONT = 'Leland';
const TEXT_FONT = 'Academico';

async function loadFonts(): Promise<void> {
  await Promise.all([
    Font.load(MUSIC_FONT, lelandUrl),
    Font.load(TEXT_FONT, academicoUrl),
    Font.load(TEXT_FONT, academicoBoldUrl, { weight: 'bold' }),
  ]);
  VexFlow.setFonts(MUSIC_FONT, TEXT_FONT);
}

/** Done when the fonts are there. Notes measured before that would be measured in another font. */
export const fontsReady: Promise<void> = loadFonts();
