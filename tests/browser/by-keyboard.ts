/** Getting about a page with the keyboard alone, as somebody does whose other hand holds the head. */
import type { Page } from 'playwright-core';

/** What the focused element is called: its label, its words, or the name of the field it is. */
export function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    if (!at) return '';
    const root = at.getRootNode();
    const label = root instanceof ShadowRoot ? root.querySelector(`label[for="${at.id}"]`) : null;
    const words = at.getAttribute('aria-label') ?? label?.textContent ?? at.textContent ?? '';
    return words.replaceAll(/\s+/g, ' ').trim();
  });
}

/**
 * Presses Tab until something called `name` has the focus.
 * @throws Error with everything that had the focus on the way
 */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  const seen: string[] = [];
  for (let i = 0; i < 150; i++) {
    const here = await focusedName(page);
    if (name.test(here)) return;
    seen.push(here);
    await page.keyboard.press('Tab');
  }
  throw new Error(`No way by Tab to ${name}; on the way were: ${[...new Set(seen)].join(' | ')}`);
}

/** Tabs to something and presses Enter on it. */
export async function enter(page: Page, name: RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}
