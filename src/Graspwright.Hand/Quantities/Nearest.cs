namespace Graspwright.Hand;

/// <summary>The known word nearest to one that is not known.</summary>
public static class Nearest
{
    /// <summary>Finds the nearest word by edit distance (Levenshtein 1966; neighbours swapped count one).</summary>
    /// <param name="word">The word.</param>
    /// <param name="known">The known words.</param>
    /// <returns>The first of the nearest; <see langword="null"/> if none is near: at most a third of the letters, and two, may differ.</returns>
    public static string? To(string word, IEnumerable<string> known)
    {
        if (word.Length > 200)
        {
            return null;
        }

        int limit = Math.Max(2, word.Length / 3);
        return known
            .Select(k => (Word: k, Distance: Distance(word, k)))
            .Where(p => p.Distance <= limit && p.Distance < Math.Max(word.Length, p.Word.Length))
            .OrderBy(p => p.Distance)
            .Select(p => p.Word)
            .FirstOrDefault();
    }

    private static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    d[i, j] = i + j;
                    continue;
                }

                int change = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
