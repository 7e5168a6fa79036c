// Values that the form's tests hold ours against, printed by CGAL.
// Needs Debian's libcgal-dev (5.5.1) and libeigen3-dev. Compile and run from the repository's root:
//   g++ -O1 -std=c++17 -DCGAL_EIGEN3_ENABLED -I/usr/include/eigen3 benchmarks/peers/form_cgal.cpp -o form_cgal -lgmp -lmpfr && ./form_cgal
#include <CGAL/Simple_cartesian.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <CGAL/Polygon_mesh_processing/border.h>
#include <CGAL/Polygon_mesh_processing/self_intersections.h>
#include <CGAL/Surface_mesh_shortest_path.h>
#include <CGAL/Surface_mesh_parameterization/LSCM_parameterizer_3.h>
#include <CGAL/Surface_mesh_parameterization/parameterize.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <cmath>
#include <cstdio>
#include <map>
#include <vector>

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Point = Kernel::Point_3;
using Mesh = CGAL::Surface_mesh<Point>;
using Vertex = Mesh::Vertex_index;
namespace PMP = CGAL::Polygon_mesh_processing;
namespace SMP = CGAL::Surface_mesh_parameterization;

static const double pi = std::acos(-1.0);

// An icosahedron halved and rounded some times, in the order of the tests' own ball.
static Mesh ball(int level) {
  const double t = (1 + std::sqrt(5.0)) / 2;
  std::vector<std::array<double, 3>> p = {{-1, t, 0}, {1, t, 0}, {-1, -t, 0}, {1, -t, 0}, {0, -1, t}, {0, 1, t}, {0, -1, -t}, {0, 1, -t}, {t, 0, -1}, {t, 0, 1}, {-t, 0, -1}, {-t, 0, 1}};
  std::vector<int> c = {0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1, 8, 3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1};
  auto unit = [](std::array<double, 3> v) { double l = std::sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]); return std::array<double, 3>{v[0] / l, v[1] / l, v[2] / l}; };
  for (auto& v : p) v = unit(v);
  for (int i = 0; i < level; i++) {
    std::map<std::pair<int, int>, int> middle;
    std::vector<int> next;
    auto mid = [&](int a, int b) {
      auto key = std::minmax(a, b);
      auto found = middle.find(key);
      if (found != middle.end()) return found->second;
      p.push_back(unit({p[a][0] + p[b][0], p[a][1] + p[b][1], p[a][2] + p[b][2]}));
      return middle[key] = int(p.size()) - 1;
    };
    for (size_t f = 0; f < c.size(); f += 3) {
      int ab = mid(c[f], c[f + 1]), bc = mid(c[f + 1], c[f + 2]), ca = mid(c[f + 2], c[f]);
      for (int v : {c[f], ab, ca, c[f + 1], bc, ab, c[f + 2], ca, bc, ab, bc, ca}) next.push_back(v);
    }
    c = next;
  }
  Mesh mesh;
  for (auto& v : p) mesh.add_vertex(Point(v[0], v[1], v[2]));
  for (size_t f = 0; f < c.size(); f += 3) mesh.add_face(Vertex(c[f]), Vertex(c[f + 1]), Vertex(c[f + 2]));
  return mesh;
}

static Mesh torus(int m, int n, double ring, double tube) {
  Mesh mesh;
  for (int i = 0; i < m; i++)
    for (int j = 0; j < n; j++) {
      double a = 2 * pi * i / m, b = 2 * pi * j / n, r = ring + tube * std::cos(b);
      mesh.add_vertex(Point(r * std::cos(a), r * std::sin(a), tube * std::sin(b)));
    }
  for (int i = 0; i < m; i++)
    for (int j = 0; j < n; j++) {
      int v = i * n + j, w = (i + 1) % m * n + j, x = i * n + (j + 1) % n, y = (i + 1) % m * n + (j + 1) % n;
      mesh.add_face(Vertex(v), Vertex(w), Vertex(y));
      mesh.add_face(Vertex(v), Vertex(y), Vertex(x));
    }
  return mesh;
}

// A grid of squares, each cut in two, laid on a cylinder R 25, H 60 that is cut open.
static Mesh cylinder(int across, int along) {
  Mesh mesh;
  for (int j = 0; j <= along; j++)
    for (int i = 0; i <= across; i++) {
      double a = 2 * pi * i / across;
      mesh.add_vertex(Point(25 * std::cos(a), 25 * std::sin(a), 60.0 * j / along));
    }
  for (int j = 0; j < along; j++)
    for (int i = 0; i < across; i++) {
      int v = j * (across + 1) + i;
      mesh.add_face(Vertex(v), Vertex(v + 1), Vertex(v + across + 2));
      mesh.add_face(Vertex(v), Vertex(v + across + 2), Vertex(v + across + 1));
    }
  return mesh;
}

// A grid of n x n squares, each cut in two, laid on a surface.
template <class At> static Mesh grid(int n, At at) {
  Mesh mesh;
  for (int j = 0; j <= n; j++)
    for (int i = 0; i <= n; i++) mesh.add_vertex(at(double(i) / n, double(j) / n));
  for (int j = 0; j < n; j++)
    for (int i = 0; i < n; i++) {
      int v = j * (n + 1) + i;
      mesh.add_face(Vertex(v), Vertex(v + 1), Vertex(v + n + 2));
      mesh.add_face(Vertex(v), Vertex(v + n + 2), Vertex(v + n + 1));
    }
  return mesh;
}

static double way(const Mesh& mesh, int from, int to) {
  CGAL::Surface_mesh_shortest_path<CGAL::Surface_mesh_shortest_path_traits<Kernel, Mesh>> paths(mesh);
  paths.add_source_point(Vertex(from));
  return paths.shortest_distance_to_source_points(Vertex(to)).first;
}

int main() {
  for (int level : {3, 4}) {
    Mesh mesh = ball(level);
    std::printf("ball %zu triangles: area %.12g, volume %.12g\n", size_t(mesh.number_of_faces()), PMP::area(mesh), PMP::volume(mesh));
    Vertex north(0);
    auto dot = [&](Vertex v) { auto p = mesh.point(north), q = mesh.point(v); return p.x() * q.x() + p.y() * q.y() + p.z() * q.z(); };
    Vertex south = north, quarter = north;
    for (Vertex v : mesh.vertices()) {
      if (dot(v) < dot(south)) south = v;
      if (std::abs(dot(v)) < std::abs(dot(quarter)) - 1e-12) quarter = v;
    }
    std::printf("  half round from corner 0: %.12g, a quarter to corner %d: %.12g\n", way(mesh, 0, south), int(quarter), way(mesh, 0, quarter));
  }
  for (int k : {1, 2}) {
    Mesh mesh = torus(48 * k, 24 * k, 30, 10);
    std::printf("torus R 30, r 10, %d x %d: area %.9f, volume %.9f, cuts itself %d\n", 48 * k, 24 * k, PMP::area(mesh), PMP::volume(mesh), int(PMP::does_self_intersect(mesh)));
  }
  Mesh mesh = cylinder(40, 12);
  std::printf("cylinder R 25, 40 sides, a quarter round and 60 along: %.12g\n", way(mesh, 0, 12 * 41 + 10));
  Mesh part = grid(60, [](double u, double v) { double a = pi / 2 * (u - 0.5), b = 5.2 * (v - 0.5), r = 0.06 + 0.025 * std::cos(b); return Point(r * std::cos(a), r * std::sin(a), 0.025 * std::sin(b)); });
  std::printf("part of a torus, 7200 triangles, from its corner to 1860, 2303, 3720: %.12g %.12g %.12g\n", way(part, 0, 1860), way(part, 0, 2303), way(part, 0, 3720));
  Mesh cone = grid(60, [](double u, double v) { double a = pi * u, s = 0.4 + 0.6 * v; return Point(0.06 * s * std::cos(a), 0.04 * s * std::sin(a), -0.2 * s); });
  std::printf("shell of an elliptic cone, 7200 triangles, from its corner to 855, 1860, 3720: %.12g %.12g %.12g\n", way(cone, 0, 855), way(cone, 0, 1860), way(cone, 0, 3720));
  auto uv = mesh.add_property_map<Vertex, Kernel::Point_2>("v:uv").first;
  auto border = PMP::longest_border(mesh).first;
  SMP::parameterize(mesh, SMP::LSCM_parameterizer_3<Mesh>(), border, uv);
  auto flat = [&](int a, int b) { return std::sqrt(CGAL::squared_distance(uv[Vertex(a)], uv[Vertex(b)])); };
  std::printf("the same laid flat by least squares conformal maps: width / height %.12g (developed: %.12g)\n", flat(0, 40) / flat(0, 12 * 41), 40 * 2 * 25 * std::sin(pi / 40) / 60);
}
