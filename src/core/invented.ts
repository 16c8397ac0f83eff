/** What a source says of an invented figure, which has no citation. Nothing else makes a figure sample data. */
export const INVENTED = 'invented sample'
