using Graspwright.Page.Pages;
using Graspwright.Page.Serving;
using Graspwright.Page.Tests;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class EveryPageTests(Chromium chromium)
{
    public static TheoryData<string, int, bool> Looks
    {
        get
        {
            TheoryData<string, int, bool> looks = [];
            foreach ((WorkPageAttribute page, _) in PageTable.All)
            {
                looks.Add(page.Address, 1440, false);
                looks.Add(page.Address, 390, true);
            }

            return looks;
        }
    }

    public static TheoryData<string> Pages => [.. PageTable.All.Select(p => p.Page.Address)];

    [Theory]
    [MemberData(nameof(Looks))]
    public async Task A_page_has_no_barrier_fits_its_width_and_asks_nothing_of_others(string address, int width, bool dark)
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/" + address, width, dark);
        await visited.Until("() => !document.querySelector('[data-waits]')");
        if (address == "drive")
        {
            await visited.Until("() => document.querySelector('.scene.ready [data-layer=wrist]') && !document.getElementById('grab').hidden");
        }

        await visited.Picture($"{address}-{width}-{(dark ? "dark" : "light")}");
        Assert.Empty(await visited.Barriers());
        Assert.Equal(width, await visited.Page.EvaluateExpressionAsync<int>("Math.max(document.documentElement.scrollWidth, innerWidth)"));
        Assert.Empty(visited.Complaints);
        Assert.All(visited.Asked, a => Assert.True(a.StartsWith(server.Address.ToString(), StringComparison.Ordinal) || a.StartsWith("data:", StringComparison.Ordinal) || a.StartsWith($"ws://{server.Address.Authority}", StringComparison.Ordinal), a));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task In_the_other_scheme_every_word_can_be_read(string address)
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/" + address, 390, dark: false);
        await visited.Until("() => !document.querySelector('[data-waits]')");
        await visited.Picture($"{address}-390-light");
        await visited.Page.EmulateMediaFeaturesAsync([new() { MediaFeature = PuppeteerSharp.MediaFeature.PrefersColorScheme, Value = "dark" }]);
        await visited.Page.SetViewportAsync(new() { Width = 1440, Height = 1000 });
        await visited.Picture($"{address}-1440-dark");
        Assert.DoesNotContain(await visited.Barriers(), b => b.StartsWith("color-contrast", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task The_keyboard_reaches_every_control_in_order_and_shows_where_it_is(string address)
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/" + address);
        await visited.Until("() => !document.querySelector('[data-waits]')");
        const string Reachable = "() => [...document.querySelectorAll('a[href], button, input, select, summary, [tabindex=\"0\"]')].filter(e => !e.disabled && e.type !== 'hidden' && e.checkVisibility({ visibilityProperty: true }) && !(e.type === 'radio' && !e.checked))";
        await visited.Page.EvaluateFunctionAsync($"() => {{ window.wanted = ({Reachable})(); window.order = []; document.addEventListener('focusin', e => order.push(wanted.indexOf(e.target))); }}");
        int count = await visited.Page.EvaluateExpressionAsync<int>("wanted.length");
        Assert.True(count > 5);
        int steps = Math.Min(count, 60);
        for (int i = 0; i < steps; i++)
        {
            await visited.Page.Keyboard.PressAsync("Tab");
            Assert.True(await visited.Page.EvaluateExpressionAsync<bool>("document.activeElement === document.body || getComputedStyle(document.activeElement).outlineStyle !== 'none'"));
        }

        int[] order = await visited.Page.EvaluateExpressionAsync<int[]>("order");
        Assert.Equal(Enumerable.Range(0, steps), order);
    }
}
