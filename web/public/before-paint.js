// Sets theme and language before the first paint, so that neither flashes. A file of its own: the page's policy
// allows no inline script. web/src/state/settings.ts keeps these two beside the rest.
(() => {
  const root = document.documentElement;
  const kept = (key) => {
    try {
      return localStorage.getItem(`tintladder.${key}`) ?? '';
    } catch {
      return '';
    }
  };
  const dark = matchMedia('(prefers-color-scheme: dark)').matches;
  root.dataset.theme =
    ['middle', 'light', 'dark'].find((t) => t === kept('theme')) ?? (dark ? 'dark' : 'middle');
  const language = kept('language') || navigator.language.slice(0, 2);
  root.lang = language === 'de' ? 'de' : 'en';
})();
