import { PHONE, withBrowser } from './app-page.ts';
import { testRules } from './readable.ts';

withBrowser();
testRules('a phone', { viewport: PHONE });
