/** Why this browser can't draw the solid; undefined where it can. A context is made and let go to find out. */
export function whyNoWebGl(): string | undefined {
  if (typeof WebGL2RenderingContext === 'undefined') return 'This browser has no WebGL 2.'
  const context = document.createElement('canvas').getContext('webgl2')
  if (!context) return 'WebGL 2 is switched off here, or the graphics driver refused it.'
  context.getExtension('WEBGL_lose_context')?.loseContext()
  return undefined
}
