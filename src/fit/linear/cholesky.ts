/**
 * Cholesky on plain row-major arrays, lower triangle: the fit factors a few dozen matrices of about eighty rows in
 * every step, and the general library's accessors took ten times as long (npm run bench). Textbook algorithm (G. H.
 * Golub, C. F. Van Loan, "Matrix Computations", 4th ed., 4.2).
 */

/**
 * L L^T = A in place: the lower triangle of `a` (n rows) becomes L. False where A is not positive definite. Two rows by
 * two columns at a time, so that every number loaded serves two products.
 */
export function choleskyInPlace(a: Float64Array, n: number): boolean {
  let i = 0;
  for (; i + 1 < n; i += 2) {
    const p = i * n;
    const q = p + n;
    for (let j = 0; j < i; j += 2) {
      const u = j * n;
      const v = u + n;
      let s00 = a[p + j]!;
      let s01 = a[p + j + 1]!;
      let s10 = a[q + j]!;
      let s11 = a[q + j + 1]!;
      for (let k = 0; k < j; k++) {
        const pk = a[p + k]!;
        const qk = a[q + k]!;
        const uk = a[u + k]!;
        const vk = a[v + k]!;
        s00 -= pk * uk;
        s01 -= pk * vk;
        s10 -= qk * uk;
        s11 -= qk * vk;
      }
      const first = 1 / a[u + j]!;
      const second = 1 / a[v + j + 1]!;
      const below = a[v + j]!;
      s00 *= first;
      s10 *= first;
      a[p + j] = s00;
      a[q + j] = s10;
      a[p + j + 1] = (s01 - s00 * below) * second;
      a[q + j + 1] = (s11 - s10 * below) * second;
    }
    let d0 = a[p + i]!;
    let d01 = a[q + i]!;
    let d1 = a[q + i + 1]!;
    for (let k = 0; k < i; k++) {
      const pk = a[p + k]!;
      const qk = a[q + k]!;
      d0 -= pk * pk;
      d01 -= pk * qk;
      d1 -= qk * qk;
    }
    if (!(d0 > 0)) return false;
    const root = Math.sqrt(d0);
    const below = d01 / root;
    d1 -= below * below;
    if (!(d1 > 0)) return false;
    a[p + i] = root;
    a[q + i] = below;
    a[q + i + 1] = Math.sqrt(d1);
  }
  if (i === n) return true;
  const p = i * n;
  let d = a[p + i]!;
  for (let j = 0; j < i; j++) {
    const u = j * n;
    let s = a[p + j]!;
    for (let k = 0; k < j; k++) s -= a[p + k]! * a[u + k]!;
    s /= a[u + j]!;
    a[p + j] = s;
    d -= s * s;
  }
  if (!(d > 0)) return false;
  a[p + i] = Math.sqrt(d);
  return true;
}

/** Y = L^-1 Y in place, Y being n rows of `columns` numbers. */
export function forwardInPlace(L: Float64Array, n: number, Y: Float64Array, columns: number): void {
  if (columns === 1) return forwardOne(L, n, Y);
  let i = 0;
  // Two rows by four in one sweep: six loads and two stores for eight products.
  for (; i + 1 < n; i += 2) {
    const p = i * n;
    const q = p + n;
    const y0 = i * columns;
    let k = 0;
    for (; k + 3 < i; k += 4) {
      const p0 = L[p + k]!;
      const p1 = L[p + k + 1]!;
      const p2 = L[p + k + 2]!;
      const p3 = L[p + k + 3]!;
      const q0 = L[q + k]!;
      const q1 = L[q + k + 1]!;
      const q2 = L[q + k + 2]!;
      const q3 = L[q + k + 3]!;
      const f = k * columns;
      for (let c = 0; c < columns; c++) {
        const v0 = Y[f + c]!;
        const v1 = Y[f + columns + c]!;
        const v2 = Y[f + 2 * columns + c]!;
        const v3 = Y[f + 3 * columns + c]!;
        Y[y0 + c]! -= p0 * v0 + p1 * v1 + p2 * v2 + p3 * v3;
        Y[y0 + columns + c]! -= q0 * v0 + q1 * v1 + q2 * v2 + q3 * v3;
      }
    }
    for (; k < i; k++) {
      const pk = L[p + k]!;
      const qk = L[q + k]!;
      const f = k * columns;
      for (let c = 0; c < columns; c++) {
        const v = Y[f + c]!;
        Y[y0 + c]! -= pk * v;
        Y[y0 + columns + c]! -= qk * v;
      }
    }
    const first = 1 / L[p + i]!;
    const second = 1 / L[q + i + 1]!;
    const below = L[q + i]!;
    for (let c = 0; c < columns; c++) {
      const v = Y[y0 + c]! * first;
      Y[y0 + c] = v;
      Y[y0 + columns + c] = (Y[y0 + columns + c]! - below * v) * second;
    }
  }
  if (i === n) return;
  for (let k = 0; k < i; k++) {
    const l = L[i * n + k]!;
    for (let c = 0; c < columns; c++) Y[i * columns + c]! -= l * Y[k * columns + c]!;
  }
  const inverse = 1 / L[i * n + i]!;
  for (let c = 0; c < columns; c++) Y[i * columns + c]! *= inverse;
}

function forwardOne(L: Float64Array, n: number, y: Float64Array): void {
  for (let i = 0; i < n; i++) {
    const at = i * n;
    let v = y[i]!;
    let w = 0;
    let k = 0;
    // Two running sums, so that one product need not wait for the last.
    for (; k + 1 < i; k += 2) {
      v -= L[at + k]! * y[k]!;
      w -= L[at + k + 1]! * y[k + 1]!;
    }
    if (k < i) v -= L[at + k]! * y[k]!;
    y[i] = (v + w) / L[at + i]!;
  }
}

/** Y = L^-T Y in place, Y being n rows of `columns` numbers. */
export function backwardInPlace(L: Float64Array, n: number, Y: Float64Array, columns: number): void {
  if (columns === 1) return backwardOne(L, n, Y);
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

/** Row by row, as L stands in memory: each number that is found is taken out of all before it. */
function backwardOne(L: Float64Array, n: number, y: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    const at = i * n;
    const v = y[i]! / L[at + i]!;
    y[i] = v;
    for (let k = 0; k < i; k++) y[k]! -= L[at + k]! * v;
  }
}

/** A -= Y^T Y, lower triangle of n rows, Y being `rows` rows of n numbers. */
export function subtractSquare(A: Float64Array, Y: Float64Array, rows: number, n: number): void {
  let k = 0;
  for (; k + 3 < rows; k += 4) {
    const a = k * n;
    const b = a + n;
    const c = b + n;
    const d = c + n;
    let i = 0;
    for (; i + 1 < n; i += 2) {
      const p0 = Y[a + i]!;
      const p1 = Y[b + i]!;
      const p2 = Y[c + i]!;
      const p3 = Y[d + i]!;
      const q0 = Y[a + i + 1]!;
      const q1 = Y[b + i + 1]!;
      const q2 = Y[c + i + 1]!;
      const q3 = Y[d + i + 1]!;
      const to = i * n;
      const next = to + n;
      for (let j = 0; j <= i; j++) {
        const v0 = Y[a + j]!;
        const v1 = Y[b + j]!;
        const v2 = Y[c + j]!;
        const v3 = Y[d + j]!;
        A[to + j]! -= p0 * v0 + p1 * v1 + p2 * v2 + p3 * v3;
        A[next + j]! -= q0 * v0 + q1 * v1 + q2 * v2 + q3 * v3;
      }
      A[next + i + 1]! -= q0 * q0 + q1 * q1 + q2 * q2 + q3 * q3;
    }
    if (i < n) {
      const to = i * n;
      const [v0, v1, v2, v3] = [Y[a + i]!, Y[b + i]!, Y[c + i]!, Y[d + i]!];
      for (let j = 0; j <= i; j++) {
        A[to + j]! -= v0 * Y[a + j]! + v1 * Y[b + j]! + v2 * Y[c + j]! + v3 * Y[d + j]!;
      }
    }
  }
  for (; k < rows; k++) {
    const a = k * n;
    for (let i = 0; i < n; i++) {
      const v = Y[a + i]!;
      for (let j = 0; j <= i; j++) A[i * n + j]! -= v * Y[a + j]!;
    }
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
