using Graspwright.Page.Serving;
using Graspwright.Page.Tests;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class LogAndSheetTests(Chromium chromium)
{
    [Fact]
    public async Task A_part_that_broke_is_noted_by_one_touch()
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        string log = Path.Combine(demo.Folder, "parts-log.csv");
        int before = File.ReadAllLines(log).Length;
        await using Visited visited = await chromium.Visit(server, "/strength", 390);
        int fitted = await visited.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('[data-part=log] button[value=broke]').length");
        await visited.Page.EvaluateExpressionAsync("window.old = document.querySelector('[data-part=log] button[value=broke]').form.elements.seen.value; document.querySelector('[data-part=log] button[value=broke]').click()");
        await visited.Until("() => document.querySelector('[data-part=log] button[value=broke]').form.elements.seen.value !== window.old");
        Assert.Equal(before + 1, File.ReadAllLines(log).Length);
        Assert.Equal(fitted, await visited.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('[data-part=log] button[value=broke]').length"));
    }

    [Fact]
    public async Task A_reading_that_is_typed_wrong_is_told_on_its_line()
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/body");
        await visited.Page.EvaluateExpressionAsync("const i = document.querySelector('form[action=\"/body/act/sheet\"] input[name=value]'); i.value = 'thirteen'; i.form.requestSubmit()");
        await visited.Until("() => document.querySelector('form[action=\"/body/act/sheet\"] input[name=value]')?.getAttribute('aria-invalid') === 'true'");
        Assert.Equal("thirteen", await visited.Page.EvaluateExpressionAsync<string>("document.querySelector('form[action=\"/body/act/sheet\"] input[name=value]').value"));
        await visited.Page.EvaluateExpressionAsync("const j = document.querySelector('form[action=\"/body/act/sheet\"] input[name=value]'); j.value = '131'; j.form.querySelector('input[name=lever]:not([type=hidden])').value = '78'; j.form.requestSubmit()");
        await visited.Until("() => document.querySelector('[data-part=measured] .sentence') && !document.querySelector('form[action=\"/body/act/sheet\"] [aria-invalid]')");
    }
}
