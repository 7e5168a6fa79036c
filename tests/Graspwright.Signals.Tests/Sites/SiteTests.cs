using CsCheck;
using Graspwright.Signals.Sites;

namespace Graspwright.Signals.Tests.Sites;

public sealed class SiteTests
{
    private static readonly Gen<(Site, SiteReading)> OneSite =
        Gen.Select(Gen.Double[0, 90], Gen.Double[0, 60], Gen.Double[0, 3].Array[5], Gen.Double[0.2, 0.6], (x, y, mean, sd) => (new Site(FormattableString.Invariant($"{x:0.000000}"), x, y, 90, 20), new SiteReading(mean, sd)));

    [Fact]
    public void The_set_found_is_the_best_of_every_set() => Gen.Select(OneSite.Array[4, 11], Gen.Int[2, 4], Gen.Double[0, 35]).Sample((all, count, distance) =>
    {
        Site[] sites = [.. all.Select(a => a.Item1)];
        SiteReading[] readings = [.. all.Select(a => a.Item2)];
        SiteLimits limits = new(count, distance, [new("scar", 20, 20, 12)]);
        double best = double.NegativeInfinity;
        foreach (int[] set in Sets(sites.Length, count))
        {
            bool clear = set.All(i => SiteSearch.Allowed(sites[i], limits)) && set.All(i => set.All(j => i == j || sites[i].DistanceTo(sites[j]) >= distance));
            best = clear ? Math.Max(best, SiteSearch.Of([.. set.Select(i => readings[i])]).Separation) : best;
        }

        SiteSet? found = SiteSearch.Find(sites, readings, limits);
        return found is null ? double.IsNegativeInfinity(best) : Math.Abs(found.Separation - best) < 1e-12;
    });

    [Fact]
    public void Sixty_sites_are_searched_without_looking_at_every_set()
    {
        (Site, SiteReading)[] all = [.. Enumerable.Range(0, 60).Select(i => (new Site($"s{i}", i % 10 * 9, i / 10 * 9, 90, 20), new SiteReading([0, 1 + i * 7 % 13, 1 + i * 5 % 11, 1 + i * 3 % 7, 1 + i * 11 % 17], 0.5 + i % 3 * 0.1)))];
        SiteSet found = SiteSearch.Find([.. all.Select(a => a.Item1)], [.. all.Select(a => a.Item2)], new(4, 20, []))!;
        Assert.True(found.Looked < 60 * 59 * 58 * 57 / 24 / 4, $"{found.Looked}");
    }

    [Fact]
    public void The_field_goes_through_its_sites_and_knows_where_it_ends()
    {
        Site[] sites = [.. Enumerable.Range(0, 12).Select(i => new Site($"s{i}", i % 4 * 15, i / 4 * 15, 90, 20))];
        SiteReading[] readings = [.. sites.Select(s => new SiteReading([0, s.XMm / 10, s.YMm / 10], 0.5))];
        SiteField field = new(sites, readings);
        for (int i = 0; i < 12; i++)
        {
            Assert.Equal(readings[i].Mean[1], field.At(sites[i].XMm, sites[i].YMm).Mean[1], 1e-9);
        }

        Assert.Equal(2.25, field.At(22.5, 15).Mean[1], 0.02);
        Assert.Equal(0.5, field.At(22.5, 15).Deviation, 1e-9);
        Assert.True(field.Knows(20, 10));
        Assert.False(field.Knows(-1, 15));
        Assert.False(field.Knows(22, 31));
        Assert.Throws<ArgumentException>(() => new SiteField([sites[0], sites[1]], readings));
        Assert.Throws<ArgumentException>(() => new SiteField([sites[0], sites[0], sites[1]], readings));
    }

    [Fact]
    public void A_pair_may_slip_as_far_as_the_signal_falls_linearly()
    {
        // One gesture against rest, level falling by 1 scatter every 10 mm along x, constant along y.
        Site[] sites = [.. Enumerable.Range(0, 35).Select(i => new Site($"s{i}", i % 7 * 10, i / 7 * 10, 90, 20))];
        SiteReading[] readings = [.. sites.Select(s => new SiteReading([0, 6 - s.XMm / 10], 1))];
        SiteField field = new(sites, readings);
        IReadOnlyList<Slip> window = PlacementWindows.Of(field, [sites[15]], [readings[15]], 0, limit: 3, directions: 4);
        Assert.Equal(20, window[0].SlipMm, 0.5); // at x = 10 it holds 5; 3 is left at x = 30
        Assert.False(window[0].EndsAtMap);
        Assert.True(window[2].EndsAtMap);
        Assert.InRange(window[2].SlipMm, 9, 10);
        Assert.True(window[1].EndsAtMap && window[3].EndsAtMap);
    }

    [Fact]
    public void Keeps_both_contacts_off_sore_places()
    {
        SiteLimits limits = new(1, 0, [new("scar", 0, 10, 3)]);
        Assert.False(SiteSearch.Allowed(new("along", 0, 0, 90, 20), limits));
        Assert.True(SiteSearch.Allowed(new("across", 0, 0, 0, 20), limits));
        Assert.Null(SiteSearch.Find([new("a", 0, 0, 90, 20)], [new([0, 1], 1)], limits));
    }

    private static IEnumerable<int[]> Sets(int n, int k) => k == 0
        ? [[]]
        : from last in Enumerable.Range(k - 1, n - k + 1) from rest in Sets(last, k - 1) select (int[])[.. rest, last];
}
