/** Whether the long tests of endurance are asked for (`npm run soak`) instead of their short forms. */
export const IS_SOAK = import.meta.env['VITE_SOAK'] === '1';
