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

/** How long a person would go on looking for something that the page is still busy with. */
const PATIENCE_MS = 20_000;

/**
 * Presses Tab until something called `name` has the focus, going round again while the page may be busy with it.
 * @throws Error with everything that had the focus on the way
 */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  const seen = new Set<string>();
  const until = Date.now() + PATIENCE_MS;
  while (Date.now() < until) {
    const here = await focusedName(page);
    if (name.test(here)) return;
    if (seen.has(here)) await page.waitForTimeout(5);
    seen.add(here);
    await page.keyboard.press('Tab');
  }
  throw new Error(`No way by Tab to ${name}; on the way were: ${[...seen].join(' | ')}`);
}

/** Tabs to something and presses Enter on it. */
export async function enter(page: Page, name: RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}
