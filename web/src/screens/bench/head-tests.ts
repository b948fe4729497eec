import { html, nothing } from 'lit';
import type { HeadRecord } from '../../../../server/api/head-record.ts';
import { call } from '../../api/call.ts';
import '../../parts/notice.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { benchSays } from '../../text/findings.ts';
import { headWords } from '../../text/head.ts';
import { num } from '../../text/numbers.ts';
import { foldStyles } from './fold-styles.ts';

type TestName = HeadRecord['tests'][number]['test'];
const ORDER = [
  'light leak',
  'aperture',
  'superposition',
  'gain',
  'lift',
] as const satisfies readonly TestName[];
const SHIMS_MM = [0, 0.1, 0.2];

/** The tests of a head, what each saw last, and what to do next where a hand is needed between two readings. */
export class TlHeadTests extends TlElement {
  static override properties = {
    record: { attribute: false },
    idle: { type: Boolean },
    running: { state: true },
    next: { state: true },
    refusal: { state: true },
  };
  declare record: HeadRecord | undefined;
  /** The head is free. */
  declare idle: boolean;
  declare running: TestName | '';
  /** What the bench asks for between two readings of a test. */
  declare next: { readonly test: TestName; readonly sentence: string } | undefined;
  declare refusal: { readonly test: TestName; readonly sentence: string } | undefined;

  static override styles = [TlElement.styles, foldStyles];

  constructor() {
    super();
    this.record = undefined;
    this.idle = true;
    this.running = '';
    this.next = undefined;
    this.refusal = undefined;
  }

  override render() {
    const t = headWords();
    return html`<details>
      <summary>${t.tests}</summary>
      <div class="inside">
        <p>${t.testsLead}</p>
        <ul>
          ${ORDER.map((test) => this.#row(test))}
        </ul>
      </div>
    </details>`;
  }

  #row(test: TestName) {
    const t = headWords();
    const last = this.record?.tests.find((found) => found.test === test);
    const state = last ? (last.passed ? t.passed : t.failed) : t.notTested;
    return html`<li>
      <div>
        <h3>${t.test[test]}: ${state}</h3>
        <p>${last ? benchSays(last.sentence) : t.testWhat[test]}</p>
        ${
          this.next?.test === test
            ? html`<tl-notice kind="note" live>${benchSays(this.next.sentence)}</tl-notice>`
            : nothing
        }
        ${
          this.refusal?.test === test
            ? html`<tl-notice kind="error" live>${benchSays(this.refusal.sentence)}</tl-notice>`
            : nothing
        }
      </div>
      <div class="buttons">${this.#buttons(test)}</div>
    </li>`;
  }

  #buttons(test: TestName) {
    const t = headWords();
    const button = (label: string, work: () => Promise<string>, name = t.run(t.test[test])) =>
      html`<button
        type="button"
        aria-label=${label === t.run(t.test[test]) ? nothing : `${name}: ${label}`}
        ?disabled=${!this.idle || this.running !== ''}
        @click=${() => void this.#run(test, work)}
      >
        ${label}
      </button>`;
    const whole = t.run(t.test[test]);
    switch (test) {
      case 'aperture':
        return button(whole, async () => (await call('testAperture')).sentence);
      case 'gain':
        return button(whole, async () => (await call('testGain')).sentence);
      case 'light leak':
        return button(whole, async () => (await call('testLightLeak')).sentence);
      case 'superposition':
        return (['off', 'on'] as const).map((secondLight) =>
          button(secondLight === 'off' ? t.alone : t.together, () =>
            this.#step(test, () => call('testSuperposition', { body: { secondLight } })),
          ),
        );
      case 'lift':
        return SHIMS_MM.map((shimMm) =>
          button(t.height(num(shimMm, 1)), () =>
            this.#step(test, () => call('testLift', { body: { shimMm } })),
          ),
        );
    }
  }

  async #step(
    test: TestName,
    ask: () => Promise<{ verdict: { sentence: string } | null; next: string }>,
  ): Promise<string> {
    const { verdict, next } = await ask();
    this.next = { test, sentence: next };
    return verdict ? verdict.sentence : next;
  }

  async #run(test: TestName, work: () => Promise<string>): Promise<void> {
    this.running = test;
    this.refusal = undefined;
    if (this.next?.test !== test) this.next = undefined;
    try {
      say(benchSays(await work()));
      this.dispatchEvent(new CustomEvent('tl-found', { bubbles: true, composed: true }));
    } catch (cause) {
      this.refusal = { test, sentence: cause instanceof Error ? cause.message : String(cause) };
    } finally {
      this.running = '';
    }
  }
}
define('tl-head-tests', TlHeadTests);
