//! Shells of triangles as files for other programs: STL for printing, glTF for looking.

use serde_json::json;

use crate::bat::mesh::Shell;
use crate::frames::DVec3;

/// STL, binary, millimetres (the format has no unit; this is what printers take), axes of frame B.
/// Source: the format as 3D Systems published it in 1989 (from memory, high): 80 bytes of header, the count,
/// then for each triangle its normal, three corners and two bytes of nothing, little-endian floats.
pub fn stl(shells: &[Shell]) -> Vec<u8> {
    let mut header = [b' '; 80];
    let words = b"backlift bat, mm";
    header[..words.len()].copy_from_slice(words);
    let count: usize = shells.iter().map(|it| it.triangles.len()).sum();
    let mut out = header.to_vec();
    out.extend((count as u32).to_le_bytes());
    for [a, b, c] in shells.iter().flat_map(Shell::corners) {
        let normal = (b - a).cross(c - a);
        let length = libm::sqrt(normal.length_squared());
        let unit = if length > 0.0 { normal / length } else { DVec3::ZERO };
        for value in [unit, 1e3 * a, 1e3 * b, 1e3 * c].into_iter().flat_map(|it| it.to_array()) {
            out.extend((value as f32).to_le_bytes());
        }
        out.extend([0, 0]);
    }
    out
}

/// Number of a four-byte float in glTF.
const FLOAT: u32 = 5126;
/// Number of a four-byte index in glTF.
const INDEX: u32 = 5125;

/// glTF 2.0 in one binary file: metres, the toe down, the face towards +z. A mesh for each shell.
/// Source: Khronos glTF 2.0 specification, sections 3.6 to 3.9 and 4 (from memory, high).
pub fn glb(shells: &[Shell]) -> serde_json::Result<Vec<u8>> {
    let mut bin: Vec<u8> = Vec::new();
    let (mut views, mut accessors, mut meshes, mut nodes) = (vec![], vec![], vec![], vec![]);
    for shell in shells {
        // x of B, to the toe, becomes −y; y of B becomes x.
        let points: Vec<[f32; 3]> =
            shell.points_B.iter().map(|it| [it.y as f32, -it.x as f32, it.z as f32]).collect();
        let edge = |pick: fn(f32, f32) -> f32, start: f32| {
            points.iter().fold([start; 3], |m, p| core::array::from_fn(|k| pick(m[k], p[k])))
        };
        let (low, high) = (edge(f32::min, f32::INFINITY), edge(f32::max, f32::NEG_INFINITY));
        let first = bin.len();
        bin.extend(points.iter().flatten().flat_map(|it| it.to_le_bytes()));
        let middle = bin.len();
        bin.extend(shell.triangles.iter().flatten().flat_map(|it| it.to_le_bytes()));
        let n = views.len();
        views.push(json!({"buffer": 0, "byteOffset": first, "byteLength": middle - first, "target": 34962}));
        views.push(json!({"buffer": 0, "byteOffset": middle, "byteLength": bin.len() - middle, "target": 34963}));
        accessors.push(json!({"bufferView": n, "componentType": FLOAT, "count": points.len(), "type": "VEC3", "min": low, "max": high}));
        accessors.push(json!({"bufferView": n + 1, "componentType": INDEX, "count": 3 * shell.triangles.len(), "type": "SCALAR"}));
        nodes.push(json!({"name": shell.name, "mesh": meshes.len()}));
        meshes.push(json!({"name": shell.name, "primitives": [{"attributes": {"POSITION": n}, "indices": n + 1}]}));
    }
    let all: Vec<usize> = (0..nodes.len()).collect();
    let document = json!({
        "asset": {"version": "2.0", "generator": "backlift"},
        "scene": 0,
        "scenes": [{"nodes": all}],
        "nodes": nodes,
        "meshes": meshes,
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{"byteLength": bin.len()}],
    });
    let mut text = serde_json::to_vec(&document)?;
    text.resize(text.len().next_multiple_of(4), b' ');
    bin.resize(bin.len().next_multiple_of(4), 0);
    let mut out = b"glTF".to_vec();
    let length = 12 + 8 + text.len() + 8 + bin.len();
    for word in [2, length as u32, text.len() as u32] {
        out.extend(word.to_le_bytes());
    }
    out.extend(b"JSON");
    out.extend(text);
    out.extend((bin.len() as u32).to_le_bytes());
    out.extend(b"BIN\0");
    out.extend(bin);
    Ok(out)
}
