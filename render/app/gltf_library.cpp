// The one file in which the library that writes glTF is compiled: it comes as a header.
#define TINYGLTF_IMPLEMENTATION
#include "render/app/tiny_gltf.h"
