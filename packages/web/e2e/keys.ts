import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** A person who has a keyboard and nothing else. */

interface Focused {
  readonly name: string;
  /** Whether a person can see that it has the focus. */
  readonly seen: boolean;
}

/** What has the focus, by the name a screen reader would say. */
const focused = (page: Page): Promise<Focused> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body) return { name: '', seen: true };
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(at);
    const labels = 'labels' in at ? [...((at as HTMLInputElement).labels ?? [])] : [];
    const said = at.getAttribute('aria-label') ?? labels.map(({ textContent }) => textContent).join(' ');
    const name = said === '' ? (at.textContent ?? '') : said;
    return { name: name.trim(), seen: (outlineStyle !== 'none' && outlineWidth !== '0px') || boxShadow !== 'none' };
  });

const MOST_PRESSES = 250;

/** Presses Tab until the focus is on something of this name; every stop on the way must show that it has the focus. */
export async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const unseen: string[] = [];
  const met: string[] = [];
  for (let presses = 0; presses < MOST_PRESSES; presses++) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    if (!now.seen) unseen.push(now.name);
    if (typeof name === 'string' ? now.name.includes(name) : name.test(now.name)) {
      expect(unseen).toEqual([]);
      return;
    }
    met.push(now.name.slice(0, 30));
  }
  throw new Error(`Tab never came to ${String(name)}, only to ${[...new Set(met)].join(' · ')}`);
}

/** Tab to it and press it. */
export async function pressAt(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

/** Tab to a field and type over what stands there. */
export async function typeInto(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

/** Tab to a list of choices and go down it until the wanted one stands there. */
export async function choose(page: Page, name: string | RegExp, value: string): Promise<void> {
  await tabTo(page, name);
  const list = page.locator('select:focus');
  await page.keyboard.press('Home');
  for (let presses = 0; presses < 40; presses++) {
    if ((await list.inputValue()) === value) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`${value} is not among the choices of ${String(name)}`);
}
