/**
 * The drawing as a PNG, `scale` times as many pixels as it is wide and high. It goes through an image
 * with a data address, which the pages' security policies allow, and a canvas, so it needs a browser.
 */
export async function svgToPng(svg: SVGSVGElement, scale: number): Promise<Blob> {
  const document = svg.ownerDocument;
  const width = Number(svg.getAttribute("width"));
  const height = Number(svg.getAttribute("height"));
  const source = new XMLSerializer().serializeToString(svg);
  const image = document.createElement("img");
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(source)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => {
      if (blob) resolve(blob);
      else reject(new Error("the browser made no image of the picture"));
    }, "image/png");
  });
}
