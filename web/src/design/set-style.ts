/**
 * `<div ${setStyle({ '--share': '0.4' })}>`: sets style properties through the CSS object model. Lit's own styleMap
 * writes a style attribute at first, which the page's policy (no inline style) refuses.
 */
import { noChange } from 'lit';
import { Directive, type ElementPart, type PartInfo, PartType, directive } from 'lit/directive.js';

type Styles = Readonly<Record<string, string | number | undefined>>;

class SetStyle extends Directive {
  #before = new Set<string>();

  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) {
      throw new Error('setStyle() stands on the element itself: <div ${setStyle({...})}>.');
    }
  }

  override render(_styles: Styles): typeof noChange {
    return noChange;
  }

  override update(part: ElementPart, [styles]: [Styles]): typeof noChange {
    const { style } = part.element as HTMLElement | SVGElement;
    for (const name of this.#before) {
      if (styles[name] === undefined) style.removeProperty(name);
    }
    this.#before = new Set();
    for (const [name, value] of Object.entries(styles)) {
      if (value === undefined) continue;
      style.setProperty(name, String(value));
      this.#before.add(name);
    }
    return noChange;
  }
}

export const setStyle = directive(SetStyle);
