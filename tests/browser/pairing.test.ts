/**
 * A phone held to the easel: the computer shows a code, the phone opens its address, and any touch reads a rung. The
 * network is 127.0.0.2, which is not 127.0.0.1 to a browser: cookies, Host and Origin are as on a real one.
 */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { enter } from './by-keyboard.ts';
import { readLadder, setPracticeHead } from './practice-ladder.ts';

let bench: BenchUnderTest;
let computer: Page;
let phone: Page;

beforeAll(async () => {
  bench = await benchUnderTest(['--pair', '--pair-host', '127.0.0.2']);
  computer = await bench.page();
  phone = await bench.page({ width: 390 });
  await computer.goto(bench.address);
  await enter(computer, /^Take the demo rack/);
  await computer.getByText('Demo: invented paints').waitFor();
  await setPracticeHead(computer);
});
afterAll(() => bench.close());

const letters = (): Promise<string> =>
  computer
    .locator('tl-pair-panel .letters')
    .textContent()
    .then((text) => text!.replace(/\s/g, ''));

describe('a phone at the easel', () => {
  it('gets the pairing page and nothing of the bench before it is paired', async () => {
    await phone.goto(bench.phoneAddress);
    await phone.getByRole('heading', { name: 'Pair this phone' }).waitFor();
    await expect.poll(() => phone.locator('tl-app').count()).toBe(0);
    await phone.evaluate(() => document.fonts.ready);
    expect((await new AxeBuilder({ page: phone }).analyze()).violations).toEqual([]);
    expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await bench.picture(phone, 'pair-phone-390');
  });

  it('is shown a code on the computer, to scan or to type', async () => {
    await computer.getByRole('button', { name: 'This screen' }).press('Enter');
    await computer.getByRole('button', { name: 'Show a code' }).press('Enter');
    await computer.getByRole('img', { name: /^QR code/ }).waitFor();
    await expect.poll(() => letters()).toMatch(/^[0-9A-Z]{8}$/);
    expect((await new AxeBuilder({ page: computer }).analyze()).violations).toEqual([]);
    await bench.picture(computer, 'pair-computer-1440');
  });

  it('says what is wrong with a wrong code, and the computer how many tries are left', async () => {
    const code = await letters();
    await phone.getByLabel('Code on the computer').fill((code.startsWith('A') ? 'C' : 'A') + code.slice(1));
    await phone.getByRole('button', { name: 'Pair' }).press('Enter');
    await phone.getByText('That is not the code on the computer').waitFor();
    await computer.getByText('4 tries left').waitFor();
    bench.errors.length = 0; // the refusal is an answer of status 403, which the browser logs
  });

  it('comes in by the address of the QR code, which keeps the code no longer', async () => {
    await phone.goto(`${bench.phoneAddress}/pair#${await letters()}`);
    await phone.getByRole('heading', { name: 'Ladder', exact: true }).waitFor();
    expect(phone.url()).toBe(`${bench.phoneAddress}/#/ladder`);
    await computer.getByText(/open now/).waitFor();
    expect(await phone.evaluate(() => document.cookie)).toBe('');
    expect(await phone.evaluate(() => JSON.stringify(Object.entries(localStorage)))).not.toMatch(/[\w-]{43}/);
    const [kept] = await phone.context().cookies();
    expect(kept).toMatchObject({ httpOnly: true, sameSite: 'Strict', domain: '127.0.0.2' });
  });

  it('reads a rung with the head on the computer, and both screens know', async () => {
    await phone.getByRole('link', { name: /^Demo yellow earth/ }).click();
    await enter(phone, /^Start this ladder/);
    await readLadder(phone, 3);
    await phone.getByText(/masstone is full/).waitFor();
    await bench.picture(phone, 'pair-reading-390');
    await computer.keyboard.press('Escape');
    await computer.goto(`${bench.address}/#/rack`);
    await computer
      .getByText(/1 of \d+ rungs/)
      .first()
      .waitFor();
  });

  it('is shut out when the computer lets go of it', async () => {
    await computer.getByRole('button', { name: 'This screen' }).press('Enter');
    await computer.getByRole('button', { name: 'Let go of this phone' }).press('Enter');
    await computer.getByText('None.').waitFor();
    await phone.goto(`${bench.phoneAddress}/?again`);
    await phone.getByRole('heading', { name: 'Pair this phone' }).waitFor();
    bench.errors.length = 0; // live events ended, and their next try was refused
  });
});
