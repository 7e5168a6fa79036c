using System.Globalization;
using Graspwright.Page.Serving;
using Graspwright.Page.Tests;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class PatternTests(Chromium chromium)
{
    [Theory]
    [InlineData(1440, false)]
    [InlineData(390, true)]
    public async Task The_form_is_turned_by_mouse_keys_and_buttons(int width, bool dark)
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/pattern", width, dark);
        await visited.Until("() => document.getElementById('solid').dataset.of && document.getElementById('solid').dataset.seen");
        string first = await Seen(visited);
        await visited.Picture(string.Create(CultureInfo.InvariantCulture, $"pattern-solid-{width}-{(dark ? "dark" : "light")}"));
        Assert.True(await Inked(visited) > 0.02);

        (decimal x, decimal y) = await visited.Middle("#solid");
        await visited.Page.Mouse.MoveAsync(x, y);
        await visited.Page.Mouse.DownAsync();
        await visited.Page.Mouse.MoveAsync(x + 60, y + 20, new() { Steps = 4 });
        await visited.Page.Mouse.UpAsync();
        await visited.Until("first => document.getElementById('solid').dataset.seen !== first", first);
        string dragged = await Seen(visited);
        await visited.Page.FocusAsync("#solid-turn");
        await visited.Page.Keyboard.PressAsync("ArrowRight");
        await visited.Until("before => document.getElementById('solid').dataset.seen !== before", dragged);
        await visited.Page.ClickAsync("#solid-tools button[data-turn='90']");
        await visited.Until("() => document.getElementById('solid-seen').textContent.includes('thumb’s side')");
        Assert.Empty(await visited.Barriers());
        Assert.Empty(visited.Complaints);
    }

    [Fact]
    public async Task The_pattern_is_taken_away_at_full_size()
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/pattern");
        await visited.Until("() => document.querySelector('a[href=\"/pattern/pattern-a4.pdf\"]')");
        using HttpClient client = new() { BaseAddress = server.Address };
        foreach ((string link, string begins) in ((string, string)[])[("pattern-a4.pdf", "%PDF-"), ("pattern-letter.pdf", "%PDF-"), ("pattern.dxf", "999\nUnits: millimetres\n  0\nSECTION"), ("pattern.svg", "<svg ")])
        {
            string text = await client.GetStringAsync(new Uri($"/pattern/{link}", UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.StartsWith(begins, text.Replace("\r\n", "\n", StringComparison.Ordinal), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_pattern_can_be_stopped_on_the_way_and_begun_again()
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/pattern");
        await visited.Until("() => document.getElementById('stop-pattern')");
        await visited.Page.ClickAsync("#stop-pattern");
        await visited.Until("() => document.getElementById('again-pattern')");
        Assert.Contains("Stopped", await visited.Text("[data-part=part-pattern]"), StringComparison.Ordinal);
        await visited.Page.ClickAsync("#again-pattern");
        await visited.Until("() => document.querySelector('a[href=\"/pattern/pattern-a4.pdf\"]')");
        Assert.Empty(visited.Complaints);
    }

    private static Task<string> Seen(Visited visited) => visited.Page.EvaluateExpressionAsync<string>("document.getElementById('solid').dataset.seen");

    /// <summary>Share of the turning view that is drawn on.</summary>
    private static Task<double> Inked(Visited visited) => visited.Page.EvaluateFunctionAsync<double>(
        "() => { const c = document.getElementById('solid'), d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data; let n = 0; for (let i = 3; i < d.length; i += 4) n += d[i] > 0 ? 1 : 0; return n / (c.width * c.height); }");
}
