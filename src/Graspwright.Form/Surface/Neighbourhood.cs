namespace Graspwright.Form.Surface;

/// <summary>Which triangle lies across each edge. Side h = 3·face + k runs from corner k to the next.</summary>
public sealed class Neighbourhood
{
    /// <summary>Nothing lies across: an open edge.</summary>
    public const int Open = -1;

    /// <summary>More than one triangle lies across, or one that is turned the other way.</summary>
    public const int Crowded = -2;

    private Neighbourhood(Mesh mesh, int[] across) => (Mesh, Across) = (mesh, across);

    /// <summary>The surface.</summary>
    public Mesh Mesh { get; }

    /// <summary>Side of the neighbour for each side; <see cref="Open"/> or <see cref="Crowded"/>.</summary>
    public int[] Across { get; }

    /// <summary>Finds the neighbours.</summary>
    /// <param name="mesh">The surface.</param>
    public static Neighbourhood Of(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        int[] corners = mesh.Corners, across = new int[corners.Length];
        (int[] start, int[] sides) = SidesByPoint(mesh);
        Array.Fill(across, Open);
        for (int v = 0; v < mesh.PointCount; v++)
        {
            for (int i = start[v]; i < start[v + 1]; i++)
            {
                int h = sides[i];
                if (across[h] != Open)
                {
                    continue;
                }

                int far = Far(corners, h, v), same = 0, partner = Open;
                for (int j = start[v]; j < start[v + 1]; j++)
                {
                    int g = sides[j];
                    if (g != h && Far(corners, g, v) == far)
                    {
                        same++;
                        partner = g;
                    }
                }

                if (same == 1 && corners[h] != corners[partner])
                {
                    (across[h], across[partner]) = (partner, h);
                }
                else if (same > 0)
                {
                    for (int j = start[v]; j < start[v + 1]; j++)
                    {
                        if (Far(corners, sides[j], v) == far)
                        {
                            across[sides[j]] = Crowded;
                        }
                    }
                }
            }
        }

        return new(mesh, across);
    }

    /// <summary>The next side round the triangle.</summary>
    /// <param name="h">A side.</param>
    public static int Next(int h) => h % 3 == 2 ? h - 2 : h + 1;

    /// <summary>The side before it round the triangle.</summary>
    /// <param name="h">A side.</param>
    public static int Previous(int h) => h % 3 == 0 ? h + 2 : h - 1;

    /// <summary>Where a side begins.</summary>
    /// <param name="h">A side.</param>
    public int From(int h) => Mesh.Corners[h];

    /// <summary>Where a side ends.</summary>
    /// <param name="h">A side.</param>
    public int To(int h) => Mesh.Corners[Next(h)];

    /// <summary>Closed runs of open sides, each in the order of the surface's own sides.</summary>
    /// <returns>Loops of sides.</returns>
    public IReadOnlyList<int[]> Loops()
    {
        Dictionary<int, List<int>> leaving = [];
        int count = 0;
        for (int h = 0; h < Across.Length; h++)
        {
            if (Across[h] < 0)
            {
                count++;
                if (!leaving.TryGetValue(From(h), out List<int>? list))
                {
                    leaving[From(h)] = list = [];
                }

                list.Add(h);
            }
        }

        List<int[]> loops = [];
        HashSet<int> used = [];
        for (int h = 0; h < Across.Length && used.Count < count; h++)
        {
            if (Across[h] >= 0 || used.Contains(h))
            {
                continue;
            }

            List<int> loop = [];
            for (int at = h; used.Add(at);)
            {
                loop.Add(at);
                int free = leaving.TryGetValue(To(at), out List<int>? choices) ? choices.FindIndex(c => !used.Contains(c)) : -1;
                if (free < 0)
                {
                    break;
                }

                at = choices![free];
            }

            loops.Add([.. loop]);
        }

        return loops;
    }

    /// <summary>Connected parts: the part of each triangle, and how many there are.</summary>
    public (int[] Part, int Count) Parts()
    {
        int faces = Mesh.FaceCount, count = 0;
        int[] part = new int[faces], stack = new int[faces];
        Array.Fill(part, -1);
        for (int f = 0; f < faces; f++)
        {
            if (part[f] >= 0)
            {
                continue;
            }

            int top = 0;
            stack[top++] = f;
            part[f] = count;
            while (top > 0)
            {
                int g = stack[--top];
                for (int k = 0; k < 3; k++)
                {
                    int other = Across[3 * g + k];
                    if (other >= 0 && part[other / 3] < 0)
                    {
                        part[other / 3] = count;
                        stack[top++] = other / 3;
                    }
                }
            }

            count++;
        }

        return (part, count);
    }

    // Each side under the lower of its two points.
    private static (int[] Start, int[] Sides) SidesByPoint(Mesh mesh)
    {
        int[] corners = mesh.Corners, start = new int[mesh.PointCount + 1], sides = new int[corners.Length];
        for (int h = 0; h < corners.Length; h++)
        {
            start[Math.Min(corners[h], corners[Next(h)]) + 1]++;
        }

        for (int v = 0; v < mesh.PointCount; v++)
        {
            start[v + 1] += start[v];
        }

        int[] at = start[..^1];
        for (int h = 0; h < corners.Length; h++)
        {
            sides[at[Math.Min(corners[h], corners[Next(h)])]++] = h;
        }

        return (start, sides);
    }

    private static int Far(int[] corners, int h, int near) => corners[h] == near ? corners[Next(h)] : corners[h];
}
