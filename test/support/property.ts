/** Properties with a fixed seed, so that a run can be repeated; SEED=… tries another one (fast-check prints it on failure). */
import fc from 'fast-check'

fc.configureGlobal({ seed: Number(process.env['SEED'] ?? 4291553) })

export default fc
