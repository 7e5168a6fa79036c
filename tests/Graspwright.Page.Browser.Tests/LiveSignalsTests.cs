using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using Graspwright.Page.Serving;
using Graspwright.Page.Signals;
using Graspwright.Page.Tests;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class LiveSignalsTests(Chromium chromium)
{
    [Fact]
    public async Task A_board_is_listened_to_recorded_and_stopped_from_another_page()
    {
        using DemoHand demo = new();
        Pipe board = new();
        BoardLines boards = new(() => ["board 1"], (_, _) => board.Reader.AsStream());
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System, boards);
        await using Visited visited = await chromium.Visit(server, "/signals");
        await visited.Page.EvaluateFunctionAsync("() => { const f = document.querySelector('form[action=\"/signals/act/listen\"]'); f.elements.rate.value = '1000'; f.elements.record.checked = true; f.requestSubmit(); }");
        await visited.Until("() => document.querySelectorAll('#now [data-channel]').length === 4");
        await Send(board, 3000);
        await visited.Until("() => [...document.querySelectorAll('#now [data-state]')].every(s => s.textContent.length > 0 && !s.textContent.startsWith('waiting'))");
        await visited.Until("() => document.querySelector('[data-work=listen] [data-far]').textContent.includes('3000 samples')");
        await visited.Picture("signals-live-1440-light");
        Assert.Empty(await visited.Barriers());

        await visited.Page.GoToAsync(new Uri(server.Address, "/mould").ToString());
        await visited.Until("() => document.querySelector('[data-part=works] [data-work=listen] button')");
        await visited.Page.EvaluateExpressionAsync("document.querySelector('[data-part=works] [data-work=listen] button').click()");
        await visited.Until("() => !document.querySelector('[data-work=listen]')");
        await visited.Page.GoToAsync(new Uri(server.Address, "/signals").ToString());
        await visited.Until("() => document.querySelector('[data-part=live] .sentence')?.textContent.includes('3000 samples of 4 channels')");
        string record = Assert.Single(Directory.GetFiles(demo.Folder, "hand.heard-*.csv"));
        Assert.Equal(3000, File.ReadLines(record).Count(l => l.Length > 0 && char.IsAsciiDigit(l[0])));
        Assert.Empty(visited.Complaints);
    }

    [Fact]
    public async Task Without_a_board_the_page_says_so()
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/signals");
        Assert.Contains("No board hangs at a serial port", await visited.Text("[data-part=live]"), StringComparison.Ordinal);
        Assert.Contains("lifted off", await visited.Text(".course"), StringComparison.Ordinal);
    }

    /// <summary>Noise of four channels with bursts on the first, the same in every run.</summary>
    private static async Task Send(Pipe board, int samples)
    {
        Random chance = new(7);
        StringBuilder lines = new();
        for (int i = 0; i < samples; i++)
        {
            double burst = i % 1000 < 400 ? 12 : 1;
            lines.AppendJoin(',', Enumerable.Range(0, 4).Select(c => (200 * (c == 0 ? burst : 1) * (chance.NextDouble() - 0.5)).ToString("0.0", CultureInfo.InvariantCulture))).Append('\n');
        }

        await board.Writer.WriteAsync(Encoding.ASCII.GetBytes(lines.ToString()), TestContext.Current.CancellationToken);
    }
}
