// Runs before the first paint so that a night screen never flashes white. The stored choice is the app's; this is a copy.
;(() => {
  let choice = 'auto'
  try {
    choice = localStorage.getItem('stillpin-theme') ?? 'auto'
  } catch {
    // No storage in this window: follow the system.
  }
  const dark = matchMedia('(prefers-color-scheme: dark)').matches
  const known = choice === 'day' || choice === 'dark' || choice === 'night'
  document.documentElement.dataset.theme = known ? choice : dark ? 'dark' : 'day'
})()
