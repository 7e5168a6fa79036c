using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>Turns triangles so that neighbours agree and the outside is out.</summary>
internal static class Turning
{
    public static Mesh Outward(Mesh mesh, List<Mend> mends, List<Leftover> left)
    {
        (bool[] turn, int odd, int place) = Agree(mesh);
        int turned = turn.Count(t => t), faces = mesh.FaceCount;
        if (2 * turned > faces)
        {
            for (int f = 0; f < faces; f++)
            {
                turn[f] = !turn[f];
            }

            turned = faces - turned;
        }

        if (turned > 0)
        {
            mends.Add(new("triangles turned the way of their neighbours", turned, mesh.Middle(Array.IndexOf(turn, true))));
            mesh = Turned(mesh, turn);
        }

        if (odd > 0)
        {
            left.Add(new("edges where inside and outside cannot be told apart", odd, mesh.Middle(place)));
        }

        Neighbourhood sides = Neighbourhood.Of(mesh);
        SurfaceSums sums = SurfaceSums.Of(sides);
        if (sums.Volume < 0 && OutwardShare(mesh) < 0.5)
        {
            mends.Add(new("triangles of an inside-out surface turned", faces, new(double.NaN, double.NaN, double.NaN)));
            bool[] all = new bool[faces];
            Array.Fill(all, true);
            mesh = Turned(mesh, all);
        }

        return mesh;
    }

    // Walks over edges of just two triangles, whichever way these are turned.
    private static (bool[] Turn, int Odd, int Place) Agree(Mesh mesh)
    {
        int[] across = Pairs(mesh);
        int faces = mesh.FaceCount, odd = 0, place = 0;
        bool[] turn = new bool[faces], seen = new bool[faces];
        int[] stack = new int[faces];
        for (int start = 0; start < faces; start++)
        {
            if (seen[start])
            {
                continue;
            }

            int top = 0;
            stack[top++] = start;
            seen[start] = true;
            while (top > 0)
            {
                int f = stack[--top];
                for (int h = 3 * f; h < 3 * f + 3; h++)
                {
                    int g = across[h];
                    if (g < 0)
                    {
                        continue;
                    }

                    bool sameWay = mesh.Corners[h] == mesh.Corners[g];
                    bool wanted = turn[f] ^ sameWay;
                    if (!seen[g / 3])
                    {
                        seen[g / 3] = true;
                        turn[g / 3] = wanted;
                        stack[top++] = g / 3;
                    }
                    else if (turn[g / 3] != wanted && g > h)
                    {
                        odd++;
                        place = f;
                    }
                }
            }
        }

        return (turn, odd, place);
    }

    /// <summary>Connected parts, whichever way their triangles are turned.</summary>
    public static (int[] Part, int Count) Parts(Mesh mesh)
    {
        int[] across = Pairs(mesh), part = new int[mesh.FaceCount], stack = new int[mesh.FaceCount];
        int count = 0;
        Array.Fill(part, -1);
        for (int start = 0; start < part.Length; start++)
        {
            if (part[start] >= 0)
            {
                continue;
            }

            int top = 0;
            stack[top++] = start;
            part[start] = count;
            while (top > 0)
            {
                int f = stack[--top];
                for (int h = 3 * f; h < 3 * f + 3; h++)
                {
                    if (across[h] >= 0 && part[across[h] / 3] < 0)
                    {
                        part[across[h] / 3] = count;
                        stack[top++] = across[h] / 3;
                    }
                }
            }

            count++;
        }

        return (part, count);
    }

    private static int[] Pairs(Mesh mesh)
    {
        int[] c = mesh.Corners, start = new int[mesh.PointCount + 1], sides = new int[c.Length], across = new int[c.Length];
        for (int h = 0; h < c.Length; h++)
        {
            start[Math.Min(c[h], c[Neighbourhood.Next(h)]) + 1]++;
        }

        for (int v = 0; v < mesh.PointCount; v++)
        {
            start[v + 1] += start[v];
        }

        int[] at = start[..^1];
        for (int h = 0; h < c.Length; h++)
        {
            sides[at[Math.Min(c[h], c[Neighbourhood.Next(h)])]++] = h;
        }

        Array.Fill(across, -1);
        for (int v = 0; v < mesh.PointCount; v++)
        {
            for (int i = start[v]; i < start[v + 1]; i++)
            {
                int far = Math.Max(c[sides[i]], c[Neighbourhood.Next(sides[i])]), count = 0, partner = -1;
                for (int j = start[v]; j < start[v + 1]; j++)
                {
                    if (j != i && Math.Max(c[sides[j]], c[Neighbourhood.Next(sides[j])]) == far)
                    {
                        count++;
                        partner = sides[j];
                    }
                }

                across[sides[i]] = count == 1 ? partner : -1;
            }
        }

        return across;
    }

    private static Mesh Turned(Mesh mesh, bool[] turn)
    {
        int[] corners = [.. mesh.Corners];
        for (int f = 0; f < turn.Length; f++)
        {
            if (turn[f])
            {
                (corners[3 * f + 1], corners[3 * f + 2]) = (corners[3 * f + 2], corners[3 * f + 1]);
            }
        }

        return mesh with { Corners = corners };
    }

    // Share of the area whose normal looks away from the middle: tells the outside of an open surface too.
    private static double OutwardShare(Mesh mesh)
    {
        Vector3D middle = default;
        double area = 0, outward = 0;
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            double a = mesh.Cross(f).Length;
            middle += a * mesh.Middle(f);
            area += a;
        }

        middle = 1 / Math.Max(area, double.Epsilon) * middle;
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            Vector3D cross = mesh.Cross(f);
            outward += cross.Dot(mesh.Middle(f) - middle) > 0 ? cross.Length : 0;
        }

        return area > 0 ? outward / area : 1;
    }
}
