/** Most sheets that one press prints; the shader keeps as many places. */
export const MOST_SHEETS = 6;

/** Puts a sheet's pixels on the canvas; the sheet's place and size come by its number. */
export const VERTEX = `
in vec2 aPosition;
in vec2 aUV;
in vec2 aEdge;
in vec4 aColour;
in float aSheet;
out vec2 vUV;
out vec2 vEdge;
out vec2 vPlace;
out vec2 vSize;
out vec4 vColour;
uniform vec2 uCanvas;
uniform vec4 uSheets[${MOST_SHEETS}];
void main(void) {
  vec4 sheet = uSheets[int(aSheet + 0.5)];
  vUV = aUV;
  vEdge = aEdge;
  vPlace = aPosition;
  vSize = sheet.zw;
  vColour = aColour;
  gl_Position = vec4((sheet.xy + aPosition) / uCanvas * vec2(2.0, -2.0) + vec2(-1.0, 1.0), 0.0, 1.0);
}`;

/**
 * Cuts a view off at its sheet's edges (a mask without a stencil), softens the edges of strokes over one device
 * pixel, and takes letters from the texture; fills and strokes take its white corner.
 */
export const FRAGMENT = `
in vec2 vUV;
in vec2 vEdge;
in vec2 vPlace;
in vec2 vSize;
in vec4 vColour;
out vec4 finalColor;
uniform sampler2D uTexture;
void main(void) {
  if (vPlace.x < 0.0 || vPlace.y < 0.0 || vPlace.x > vSize.x || vPlace.y > vSize.y) discard;
  float cover = clamp(vEdge.y + 0.5 - abs(vEdge.x), 0.0, 1.0);
  finalColor = vColour * (cover * texture(uTexture, vUV).a);
}`;
