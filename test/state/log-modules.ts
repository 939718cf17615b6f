/** The Log of a window that has just been opened, with what makes complaints and what brings them back. */
export async function importLog() {
  const [log, making, undoing] = await Promise.all([
    import('../../src/state/complaints.ts'),
    import('../../src/state/new-complaint.ts'),
    import('../../src/state/undo-remove.ts'),
  ])
  return { ...log, ...making, ...undoing }
}
