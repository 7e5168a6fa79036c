using Graspwright.Page.Serving;
using Graspwright.Page.Tests;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class ClockTests(Chromium chromium)
{
    private const string Runs = "() => document.getElementById('clock')?.dataset.runs === 'true' && !document.getElementById('during').hidden";

    [Fact]
    public async Task One_touch_starts_the_clock_and_it_goes_on_across_a_reload_and_a_lost_connection()
    {
        using DemoHand demo = new();
        string state = Path.Combine(demo.Folder, "hand.clock.json");
        PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        try
        {
            await using Visited visited = await chromium.Visit(server, "/clock", 390);
            await visited.Page.ClickAsync("#start");
            await visited.Until(Runs);
            await visited.Until("() => document.getElementById('figures').textContent.startsWith('−0:0')");
            await visited.Picture("clock-runs-390");
            SpinWait.SpinUntil(() => File.Exists(state), TimeSpan.FromSeconds(20));
            string kept = await File.ReadAllTextAsync(state, TestContext.Current.CancellationToken);

            await visited.Page.ReloadAsync();
            await visited.Until(Runs);
            Assert.Equal(kept, await File.ReadAllTextAsync(state, TestContext.Current.CancellationToken));

            await server.DisposeAsync();
            await visited.Until("() => document.documentElement.dataset.line === 'gone'");
            await visited.Until("() => document.getElementById('heading').textContent === 'MIX' && document.getElementById('spoken').textContent.startsWith('Mix now')");
            Assert.StartsWith("0:", await visited.Text("#figures"), StringComparison.Ordinal);
        }
        finally
        {
            await server.DisposeAsync();
        }
    }
}
