import { CHANGES } from '../../reference/changes.ts'

/** What changed, edition by edition. */
export function Changes() {
  return (
    <>
      {CHANGES.map(({ rules, changes }) => (
        <section key={rules} aria-labelledby={`edition-${rules}`}>
          <h3 id={`edition-${rules}`}>Edition {rules} of the rules</h3>
          <ul>
            {changes.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </section>
      ))}
    </>
  )
}
