/** A picture that a maker drops or chooses, made small enough to send, and an address to show it at. */

/** As many dots as the server looks at; a finer picture tells no cell of a mat more. */
const LONGEST = 1600;
const MOST_RAW_BYTES = 5_000_000;

export interface PictureFile {
  /** Its file's bytes, in base 64. */
  data: string;
  /** Where it can be shown; empty where this browser cannot show it. */
  url: string;
  width: number;
  height: number;
}

export function isPicture(file: File): boolean {
  return file.type.startsWith("image/") || /\.(png|jpe?g|webp|gif|bmp|tiff?)$/i.test(file.name);
}

/** Read a picture, turned as the camera says. What this browser cannot read is left to the server.
 * @returns null where it is too large to send as it is. */
export async function readPicture(file: File): Promise<PictureFile | null> {
  const bitmap = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => null);
  if (!bitmap) return file.size > MOST_RAW_BYTES ? null : { data: await base64Of(file), url: "", width: 0, height: 0 };
  const share = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(bitmap.width * share));
  canvas.height = Math.max(1, Math.round(bitmap.height * share));
  const context = canvas.getContext("2d")!;
  context.imageSmoothingQuality = "high";
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  // Drawings keep their sharp colours and clear parts; a photo would be many times larger that way.
  const drawn = /png|gif|webp|bmp/.test(file.type) ? await blobOf(canvas, "image/png") : null;
  const blob = drawn && drawn.size < MOST_RAW_BYTES ? drawn : await blobOf(canvas, "image/jpeg");
  return { data: await base64Of(blob), url: URL.createObjectURL(blob), width: canvas.width, height: canvas.height };
}

function blobOf(canvas: HTMLCanvasElement, type: string): Promise<Blob> {
  return new Promise((done, fail) => canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error(type))), type, 0.93));
}

async function base64Of(blob: Blob): Promise<string> {
  const url = await new Promise<string>((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result as string);
    reader.onerror = () => fail(reader.error);
    reader.readAsDataURL(blob);
  });
  return url.slice(url.indexOf(",") + 1);
}
