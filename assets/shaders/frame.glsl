// What is the same for a whole frame. Bodies carry no version line: the loader puts it first.
layout(std140) uniform Frame {
    mat4 clip_from_world;
    mat4 shadow_from_world;
    vec4 eye;        // xyz; w: from vine to vine
    vec4 to_sun;     // xyz unit; w: 1 under an overcast sky
    vec4 sun;        // rgb times strength; w: exposure
    vec4 sky_up;     // w: ambient strength
    vec4 sky_horizon;  // w: fog a metre
    vec4 bounce;     // w: radius of half a pixel at w = 1
    vec4 picture;    // width, height; w: from row to row
};
