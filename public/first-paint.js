// Runs before the first paint so that a night screen never flashes white (the stored choice is the app's; this is a copy),
// so that a start that fails says so instead of staying blank, and so that what the address opens is on its way at once.
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
  // The parts of the place that is opened, asked for beside the app, which would ask for them when it has arrived and runs.
  const { names, places } = /* filled in by the build */ { names: '', places: {} }
  const here = location.hash.replace(/^#?\/?/, '')
  const [place = ''] = Object.keys(places)
    .filter((one) => here.startsWith(one))
    .sort((a, b) => b.length - a.length)
  const ask = () => {
    for (const at of places[place] ?? []) {
      const link = document.createElement('link')
      link.rel = 'modulepreload'
      link.crossOrigin = ''
      link.href = `./assets/${names.split(' ')[at]}.js`
      document.head.append(link)
    }
  }
  // behind what the page itself names: a browser takes few files at a time
  document.addEventListener('readystatechange', ask, { once: true })
})()
