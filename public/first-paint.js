// Runs before the first paint so that a night screen never flashes white (the stored choice is the app's; this is a copy),
// and so that a start that fails says so instead of staying blank.
;(() => {
  let choice = 'auto'
  try {
    choice = localStorage.getItem('stillpin-theme') ?? 'auto'
  } catch {
    // No storage in this window: follow the system.
  }
  const dark = matchMedia('(prefers-color-scheme: dark)').matches
  const known = ['day', 'dark', 'night', 'glare'].includes(choice)
  const { dataset } = document.documentElement
  dataset.theme = known ? choice : dark ? 'dark' : 'day'
  // While the app is expected to appear its words for a failed start stay hidden; without this file they stand at once.
  dataset.starting = ''
  const tell = () => {
    delete dataset.starting
  }
  addEventListener('error', tell, true)
  setTimeout(tell, 10_000)
})()
