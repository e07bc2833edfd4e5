// Before the first paint, so that the night theme never flashes white. A file of its own: the page's policy runs no
// script that stands inside the page.
try {
  if (JSON.parse(localStorage.getItem('slabwright.preferences') ?? '{}').theme === 'night')
    document.documentElement.dataset.theme = 'night';
} catch {
  document.documentElement.dataset.theme = '';
}
