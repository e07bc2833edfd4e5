import { DESK, withBrowser } from './app-page.ts';
import { testRules } from './readable.ts';

withBrowser();
testRules('a desk', { viewport: DESK });
