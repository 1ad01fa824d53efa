/** Makes a photograph ready to be kept: no larger than it is looked at, upright, and without what a camera writes into it. */

/** Longer side [px]: a hundredth of a millimetre on a part that fills the picture is lost anyway. */
const longest = 2600;
const quality = 0.88;

/** @throws Error in words when the browser cannot read the file as a picture */
export async function shrunk(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => undefined);
  if (!picture) throw new Error('This browser cannot read that file as a picture. Use JPEG, PNG or WebP.');
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  // Written anew, it carries neither the place nor the time nor the number of the camera.
  const written = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
  if (!written) throw new Error('The picture could not be made smaller.');
  return written;
}
