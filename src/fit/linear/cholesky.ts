/**
 * Cholesky on plain row-major arrays, lower triangle: the fit factors a few dozen matrices of about eighty rows in
 * every step, and the general library's accessors took ten times as long (npm run bench). Textbook algorithm (G. H.
 * Golub, C. F. Van Loan, "Matrix Computations", 4th ed., 4.2).
 */

/** L L^T = A in place: the lower triangle of `a` (n rows) becomes L. False where A is not positive definite. */
export function choleskyInPlace(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    const jRow = j * n;
    let d = a[jRow + j]!;
    for (let k = 0; k < j; k++) d -= a[jRow + k]! * a[jRow + k]!;
    if (!(d > 0)) return false;
    const root = Math.sqrt(d);
    a[jRow + j] = root;
    const inverse = 1 / root;
    for (let i = j + 1; i < n; i++) {
      const iRow = i * n;
      let v = a[iRow + j]!;
      for (let k = 0; k < j; k++) v -= a[iRow + k]! * a[jRow + k]!;
      a[iRow + j] = v * inverse;
    }
  }
  return true;
}

/** Y = L^-1 Y in place, Y being n rows of `columns` numbers. */
export function forwardInPlace(L: Float64Array, n: number, Y: Float64Array, columns: number): void {
  for (let i = 0; i < n; i++) {
    const row = i * columns;
    for (let k = 0; k < i; k++) {
      const l = L[i * n + k]!;
      if (l === 0) continue;
      const from = k * columns;
      for (let c = 0; c < columns; c++) Y[row + c]! -= l * Y[from + c]!;
    }
    const inverse = 1 / L[i * n + i]!;
    for (let c = 0; c < columns; c++) Y[row + c]! *= inverse;
  }
}

/** Y = L^-T Y in place, Y being n rows of `columns` numbers. */
export function backwardInPlace(L: Float64Array, n: number, Y: Float64Array, columns: number): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = i * columns;
    for (let k = i + 1; k < n; k++) {
      const l = L[k * n + i]!;
      if (l === 0) continue;
      const from = k * columns;
      for (let c = 0; c < columns; c++) Y[row + c]! -= l * Y[from + c]!;
    }
    const inverse = 1 / L[i * n + i]!;
    for (let c = 0; c < columns; c++) Y[row + c]! *= inverse;
  }
}

/** A^-1, full, from its Cholesky factor: L^-1 first, which is triangular, then L^-T L^-1. */
export function inverseFromCholesky(L: Float64Array, n: number): Float64Array {
  const T = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const row = i * n;
    const inverse = 1 / L[row + i]!;
    T[row + i] = inverse;
    for (let k = 0; k < i; k++) {
      const l = L[row + k]! * inverse;
      if (l === 0) continue;
      const from = k * n;
      for (let c = 0; c <= k; c++) T[row + c]! -= l * T[from + c]!;
    }
  }
  const out = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    const row = k * n;
    for (let i = 0; i <= k; i++) {
      const v = T[row + i]!;
      if (v === 0) continue;
      const to = i * n;
      for (let j = 0; j <= i; j++) out[to + j]! += v * T[row + j]!;
    }
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) out[j * n + i] = out[i * n + j]!;
  return out;
}

/** ln det A from its Cholesky factor. */
export function logDeterminant(L: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.log(L[i * n + i]!);
  return 2 * sum;
}

/**
 * Columns F with F F^T = C within `leftOut` of every variance (pivoted Cholesky): few columns where C is smooth.
 */
export function factorColumns(C: Float64Array, n: number, leftOut: number): Float64Array[] {
  const left = Float64Array.from({ length: n }, (_, i) => Math.max(0, C[i * n + i]!));
  const enough = left.map((v) => v * leftOut);
  const columns: Float64Array[] = [];
  while (columns.length < n) {
    let pivot = 0;
    for (let i = 1; i < n; i++) if (left[i]! - enough[i]! > left[pivot]! - enough[pivot]!) pivot = i;
    if (!(left[pivot]! > enough[pivot]!)) break;
    const root = Math.sqrt(left[pivot]!);
    const column = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      let c = C[i * n + pivot]!;
      for (const before of columns) c -= before[i]! * before[pivot]!;
      column[i] = c / root;
    }
    columns.push(column);
    for (let i = 0; i < n; i++) left[i] = Math.max(0, left[i]! - column[i]! ** 2);
  }
  return columns;
}
