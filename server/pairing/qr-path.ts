import QRCode from 'qrcode';

/** A QR code (ISO/IEC 18004) as one SVG path of unit squares, with the four squares of quiet zone it asks for. */
export function qrPath(text: string): { readonly size: number; readonly path: string } {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' });
  const quiet = 4;
  let path = '';
  for (let y = 0; y < modules.size; y += 1) {
    for (let x = 0; x < modules.size; x += 1) {
      if (modules.get(y, x)) path += `M${x + quiet} ${y + quiet}h1v1h-1z`;
    }
  }
  return { size: modules.size + 2 * quiet, path };
}
