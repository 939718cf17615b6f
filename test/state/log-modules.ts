/** The Log of a window that has just been opened, with what makes complaints. */
export async function importLog() {
  const [log, making] = await Promise.all([
    import('../../src/state/complaints.ts'),
    import('../../src/state/new-complaint.ts'),
  ])
  return { ...log, ...making }
}
