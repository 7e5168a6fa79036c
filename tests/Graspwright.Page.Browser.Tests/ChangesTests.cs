using Graspwright.Page.Serving;
using Graspwright.Page.Tests;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class ChangesTests(Chromium chromium)
{
    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task A_change_is_made_by_one_touch_and_undo_takes_it_back(int width)
    {
        using DemoHand demo = new();
        string before = demo.Text;
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/changes", width);
        await visited.Until("() => document.querySelector('#part-changes [data-layer=steps]')");
        Assert.Contains("buys most for its evenings", await visited.Text("#part-changes .sentence"), StringComparison.Ordinal);
        await visited.Page.EvaluateExpressionAsync("document.querySelector('button[aria-label=\"Make it: longer slot\"]').click()");
        await visited.Until("() => document.querySelector('#part-changes table') && !document.querySelector('button[aria-label=\"Make it: longer slot\"]')");
        Assert.Contains("length = \"5 mm\"", demo.Text, StringComparison.Ordinal);
        await visited.Page.EvaluateExpressionAsync("document.querySelector('form[action=\"/undo\"] button').click()");
        await visited.Until("() => document.querySelector('button[aria-label=\"Make it: longer slot\"]')");
        Assert.Equal(before, demo.Text);
        Assert.Empty(visited.Complaints);
    }

    [Fact]
    public async Task What_was_tried_on_the_drive_and_kept_stands_on_the_list_weighed()
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/drive");
        await visited.Until("() => document.querySelector('.scene.ready')");
        await visited.Page.EvaluateFunctionAsync("() => { const i = document.getElementById('value-crank-fulcrum-x'); i.value = '24 mm'; i.form.requestSubmit(); }");
        await visited.Until("() => document.querySelector('form[action=\"/drive/act/keep\"]')");
        await visited.Page.EvaluateFunctionAsync("() => { const f = document.querySelector('form[action=\"/drive/act/keep\"]'); f.elements.name.value = 'fulcrum forward'; f.requestSubmit(); }");
        await visited.Until("() => document.getElementById('value-crank-fulcrum-x').value === '21.3 mm'");
        Assert.Contains("[changes.\"fulcrum forward\".edits]", demo.Text, StringComparison.Ordinal);
        await visited.Page.GoToAsync(new Uri(server.Address, "/changes").ToString());
        await visited.Until("() => document.querySelector('button[aria-label=\"Make it: fulcrum forward\"]')");
        Assert.Contains("+ fulcrum forward", await visited.Text("#part-changes [data-layer=names]") + await visited.Text("#part-changes"), StringComparison.Ordinal);
    }
}
