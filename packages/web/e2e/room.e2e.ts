import { DESK, withBrowser } from './app-page.ts';
import { testRoom } from './readable.ts';

withBrowser();
testRoom('at 320 pixels', { viewport: { width: 320, height: 640 } });
testRoom('at 200 % on a desk', {
  viewport: { width: DESK.width / 2, height: DESK.height / 2 },
  deviceScaleFactor: 2,
});
