/** An address as a pattern that the camera of a phone reads (ISO/IEC 18004). */
import { encode } from 'uqr';

export function CodePicture({ address }: { readonly address: string }) {
  const { data, size } = encode(address, { ecc: 'M', border: 4 });
  const dark = data.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : []))).join('');
  return (
    <svg
      className="code-picture"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={`Pattern for a camera: ${address}`}
    >
      <rect width={size} height={size} fill="white" />
      <path d={dark} fill="black" shapeRendering="crispEdges" />
    </svg>
  );
}
