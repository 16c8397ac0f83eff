/** What fields that read the catalogue say of their argument overlayRevision. */
export const OVERLAY_ARGUMENT =
  "Revision of your organisation's own figures to read over it; 0 for the shared catalogue alone; the newest by default."
