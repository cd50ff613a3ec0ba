import { saveAs } from '../save-as.ts'

/** A drawing as a picture of dots, twice as fine as it is large. */
export async function savePng(svg: string, name: string): Promise<void> {
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = image.width * 2
  canvas.height = image.height * 2
  const ink = canvas.getContext('2d')
  if (ink === null) throw new Error('this browser draws no pictures')
  ink.scale(2, 2)
  ink.drawImage(image, 0, 0)
  canvas.toBlob(blob => blob && saveAs(blob, 'image/png', name), 'image/png')
}
