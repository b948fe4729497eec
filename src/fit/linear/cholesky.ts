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
      let w = 0;
      let k = 0;
      // Two running sums, so that one product need not wait for the last.
      for (; k + 3 < j; k += 4) {
        v -= a[iRow + k]! * a[jRow + k]! + a[iRow + k + 1]! * a[jRow + k + 1]!;
        w -= a[iRow + k + 2]! * a[jRow + k + 2]! + a[iRow + k + 3]! * a[jRow + k + 3]!;
      }
      for (; k < j; k++) v -= a[iRow + k]! * a[jRow + k]!;
      a[iRow + j] = (v + w) * inverse;
    }
  }
  return true;
}

/** Y = L^-1 Y in place, Y being n rows of `columns` numbers. */
export function forwardInPlace(L: Float64Array, n: number, Y: Float64Array, columns: number): void {
  for (let i = 0; i < n; i++) {
    const row = i * columns;
    const at = i * n;
    let k = 0;
    // Four rows in one sweep: one load and store of Y's row for four products.
    for (; k + 3 < i; k += 4) {
      const l0 = L[at + k]!;
      const l1 = L[at + k + 1]!;
      const l2 = L[at + k + 2]!;
      const l3 = L[at + k + 3]!;
      if (l0 === 0 && l1 === 0 && l2 === 0 && l3 === 0) continue;
      let f0 = k * columns;
      let f1 = f0 + columns;
      let f2 = f1 + columns;
      let f3 = f2 + columns;
      for (let c = row; c < row + columns; c++) {
        Y[c]! -= l0 * Y[f0++]! + l1 * Y[f1++]! + l2 * Y[f2++]! + l3 * Y[f3++]!;
      }
    }
    for (; k < i; k++) {
      const l = L[at + k]!;
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
    let k = 0;
    // T is zero above its diagonal, so that four rows may be swept to the length of the longest.
    for (; k + 3 < i; k += 4) {
      const l0 = L[row + k]! * inverse;
      const l1 = L[row + k + 1]! * inverse;
      const l2 = L[row + k + 2]! * inverse;
      const l3 = L[row + k + 3]! * inverse;
      if (l0 === 0 && l1 === 0 && l2 === 0 && l3 === 0) continue;
      const f0 = k * n;
      for (let c = 0; c <= k + 3; c++) {
        const f = f0 + c;
        T[row + c]! -= l0 * T[f]! + l1 * T[f + n]! + l2 * T[f + 2 * n]! + l3 * T[f + 3 * n]!;
      }
    }
    for (; k < i; k++) {
      const l = L[row + k]! * inverse;
      if (l === 0) continue;
      const from = k * n;
      for (let c = 0; c <= k; c++) T[row + c]! -= l * T[from + c]!;
    }
  }
  const out = new Float64Array(n * n);
  let k = 0;
  for (; k + 3 < n; k += 4) {
    const r0 = k * n;
    const r1 = r0 + n;
    const r2 = r1 + n;
    const r3 = r2 + n;
    for (let i = 0; i <= k + 3; i++) {
      const v0 = T[r0 + i]!;
      const v1 = T[r1 + i]!;
      const v2 = T[r2 + i]!;
      const v3 = T[r3 + i]!;
      const to = i * n;
      for (let j = 0; j <= i; j++) {
        out[to + j]! += v0 * T[r0 + j]! + v1 * T[r1 + j]! + v2 * T[r2 + j]! + v3 * T[r3 + j]!;
      }
    }
  }
  for (; k < n; k++) {
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
