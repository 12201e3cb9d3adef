/**
 * The solid's own shaders. Colours are the screen's, as the style sheet gives them, and light only multiplies them: a level
 * floor in open daylight shows exactly the tint that the plan shows for its depth.
 */
export const shellVertex = /* glsl */ `
attribute float rim;
varying vec3 place;
varying vec3 facing;
varying float onRim;
void main() {
  place = position;
  facing = normal;
  onRim = rim;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`

export const shellFragment = /* glsl */ `
uniform sampler2D ramp;
uniform sampler2D light;
uniform vec2 lightOrigin;
uniform float cell;
uniform vec2 heights; // lowest, rim [m]
uniform float deepest;
uniform float level;
uniform vec3 sun;
uniform vec3 dry;
uniform vec3 lineTone;
uniform float night;
varying vec3 place;
varying vec3 facing;
varying float onRim;
/** Blends the four cells around a place, but only those that belong to it: no light leaks over the edge of a tread. */
vec4 lightAt(vec2 at, float z, float flatness) {
  vec2 grid = (at - lightOrigin) / cell - 0.5;
  ivec2 corner = ivec2(floor(grid));
  vec2 part = grid - floor(grid);
  ivec2 last = textureSize(light, 0) - 1;
  vec4 sum = vec4(0.0);
  float total = 0.0;
  for (int k = 0; k < 4; k++) {
    ivec2 step = ivec2(k & 1, k >> 1);
    vec4 texel = texelFetch(light, clamp(corner + step, ivec2(0), last), 0);
    float height = mix(heights.x, heights.y, texel.b);
    vec2 share = mix(1.0 - part, part, vec2(step));
    // A level place takes cells of its own height; an upright one takes those at its foot.
    float level = 1.0 / (1.0 + 400.0 * (height - z) * (height - z));
    float foot = height < z + 0.03 ? 1.0 : 0.01;
    float weight = (share.x * share.y + 1e-4) * mix(foot, level, flatness);
    sum += texel * weight;
    total += weight;
  }
  return sum / total;
}
void main() {
  vec3 n = normalize(facing);
  float flatness = smoothstep(0.35, 0.95, n.z);
  vec4 lit = lightAt(place.xy + n.xy * cell * 0.75, place.z, flatness);
  float foot = mix(heights.x, heights.y, lit.b);
  float up = clamp((place.z - foot) / max(heights.y - foot, 1e-3), 0.0, 1.0);
  // A wall sees more sky the higher it is; a floor sees what the raster says.
  float sky = mix(mix(lit.r, 1.0, up * up), lit.r, flatness);
  float sunned = mix(mix(lit.g, 1.0, smoothstep(0.55, 1.0, up)), lit.g, flatness);
  float hemi = 0.89 + 0.11 * n.z;
  float beam = max(dot(n, sun), 0.0) / sun.z;
  float shade = 0.78 * hemi * mix(0.80, 1.0, sky) + 0.22 * min(beam, 1.25) * mix(0.25, 1.0, sunned);
  // At night the paper is dark: shade is taken back so that the walls do not sink into it.
  shade = mix(shade, 0.3 + 0.7 * shade, night);

  float wet = 1.0 - smoothstep(-0.5, 0.5, (place.z - level) / max(fwidth(place.z), 1e-4));
  vec3 tint = texture2D(ramp, vec2(clamp(-place.z / deepest, 0.0, 1.0) * (127.0 / 128.0) + 0.5 / 128.0, 0.5)).rgb;
  vec3 tone = mix(dry, tint, wet * (1.0 - onRim * step(level, place.z)));
  // Sky light is cooler than the sun's: what lies in shade turns a little blue, not grey.
  tone *= pow(vec3(shade), vec3(1.12, 1.0, 0.90));

  // The water's edge, drawn where the shell passes through the level; a tread that lies just at it has no edge.
  float rise = fwidth(place.z);
  float edge = 1.0 - smoothstep(0.35, 1.05, abs(place.z - level) / max(rise, 1e-6));
  tone = mix(tone, lineTone, edge * step(2e-4, rise));
  gl_FragColor = vec4(tone, 1.0);
}`

export const flatVertex = /* glsl */ `
uniform float height;
varying vec2 place;
void main() {
  place = position.xy;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position.xy, height, 1.0);
}`

export const groundFragment = /* glsl */ `
uniform sampler2D away;
uniform vec4 awayFrame; // origin xy, size xy [m]
uniform float reach;
uniform float coping;
uniform vec2 shadowStep;
uniform vec3 paper;
uniform vec3 stone;
uniform vec3 shade;
uniform vec3 edgeTone;
uniform float shadowStrength;
varying vec2 place;
float distanceAt(vec2 at) {
  vec2 uv = (at - awayFrame.xy) / awayFrame.zw;
  if (any(lessThan(uv, vec2(0.0))) || any(greaterThan(uv, vec2(1.0)))) return reach;
  return texture2D(away, uv).r;
}
void main() {
  float d = distanceAt(place);
  float pixel = max(length(fwidth(place)) * 0.7, 1e-4);
  // The band stands a little above the ground: it throws a short soft shadow away from the sun.
  float under = distanceAt(place + shadowStep) - coping;
  float around = d - coping;
  float shadow = shadowStrength * (0.62 * (1.0 - smoothstep(-0.05, 0.16, under)) + 0.38 * exp(-max(around, 0.0) / 0.24));
  vec3 tone = mix(paper, shade, shadow * (1.0 - smoothstep(reach * 0.7, reach, d)));
  float band = 1.0 - smoothstep(-0.5, 0.5, around / pixel);
  tone = mix(tone, stone, band);
  float edge = 1.0 - smoothstep(0.3, 1.1, abs(around) / pixel);
  tone = mix(tone, edgeTone, edge);
  gl_FragColor = vec4(tone, 1.0);
}`

export const waterFragment = /* glsl */ `
uniform vec3 tone;
uniform float strength;
varying vec2 place;
void main() {
  gl_FragColor = vec4(tone, strength);
}`

/** A line of constant width on the screen: a quad a segment, drawn toward the eye so that it wins over its own surface. */
export const lineVertex = /* glsl */ `
attribute vec3 from;
attribute vec3 to;
uniform vec2 screen;
uniform float halfWidth;
uniform float pull;
varying float across;
void main() {
  vec4 a = modelViewMatrix * vec4(from, 1.0);
  vec4 b = modelViewMatrix * vec4(to, 1.0);
  a.xyz *= 1.0 - pull;
  b.xyz *= 1.0 - pull;
  vec4 p = projectionMatrix * a;
  vec4 q = projectionMatrix * b;
  vec2 along = (q.xy / q.w - p.xy / p.w) * screen;
  float run = length(along);
  along = run > 1e-6 ? along / run : vec2(1.0, 0.0);
  float reach = halfWidth + 0.7;
  across = position.y * reach;
  vec4 end = mix(p, q, position.x);
  end.xy += vec2(-along.y, along.x) * position.y * reach * 2.0 / screen * end.w;
  gl_Position = end;
}`

export const lineFragment = /* glsl */ `
uniform vec3 tone;
uniform float strength;
uniform float halfWidth;
varying float across;
void main() {
  gl_FragColor = vec4(tone, strength * (1.0 - smoothstep(halfWidth - 0.35, halfWidth + 0.65, abs(across))));
}`
