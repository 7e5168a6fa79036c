using Graspwright.Page.Serving;
using Graspwright.Page.Tests;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class DriveTests(Chromium chromium) : IAsyncLifetime
{
    private const string Ready = "() => document.querySelector('.scene.ready') && !document.getElementById('grab').hidden";
    private readonly DemoHand _demo = new();
    private PageServer _server = null!;

    public async ValueTask InitializeAsync() => _server = await PageServer.Start(_demo.File, 0, TimeProvider.System);

    public async ValueTask DisposeAsync()
    {
        await _server.DisposeAsync();
        _demo.Dispose();
    }

    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task Dragging_the_fulcrum_redraws_the_curves_and_letting_go_puts_it_into_the_file(int width)
    {
        string before = _demo.Text;
        await using Visited visited = await chromium.Visit(_server, "/drive", width);
        await visited.Until(Ready);
        string curves = await visited.Page.EvaluateExpressionAsync<string>("document.getElementById('curves').innerHTML");
        (decimal x, decimal y) = await visited.Middle("#grab");
        await visited.Page.Mouse.MoveAsync(x, y);
        await visited.Page.Mouse.DownAsync();
        await visited.Page.Mouse.MoveAsync(x + 6, y + 3, new() { Steps = 6 });
        await visited.Until("before => document.getElementById('curves').innerHTML !== before && document.getElementById('moved').textContent.includes('crank.fulcrum.x')", curves);
        Assert.Equal(before, _demo.Text);
        await visited.Page.Mouse.UpAsync();
        await visited.Until("() => document.getElementById('moved').textContent.startsWith('In the hand file')");
        string after = _demo.Text;
        Assert.DoesNotContain("fulcrum = [\"21.3 mm\", \"19 mm\"]", after, StringComparison.Ordinal);
        Assert.Equal(before.Split('\n').Length, after.Split('\n').Length);
        Assert.Single(before.Split('\n').Zip(after.Split('\n')), l => l.First != l.Second);
        await visited.Until("() => document.querySelector('form[action=\"/undo\"] button') && !document.querySelector('form[action=\"/undo\"] button').disabled");
        await visited.Page.ClickAsync("form[action='/undo'] button");
        await visited.Until("() => !document.querySelector('form[action=\"/redo\"] button').disabled");
        Assert.Equal(before, _demo.Text);
        Assert.Empty(visited.Complaints);
    }

    [Fact]
    public async Task A_typed_value_goes_in_with_its_unit_and_a_wrong_one_is_answered_beside_its_field()
    {
        await using Visited visited = await chromium.Visit(_server, "/drive");
        await visited.Until(Ready);
        await Type(visited, "value-crank-fulcrum-x", "21");
        await visited.Until("() => document.getElementById('value-crank-fulcrum-x-says').textContent.includes('21 mm')");
        await Type(visited, "value-crank-fulcrum-x", "0.9 in");
        await visited.Until("() => document.getElementById('value-crank-fulcrum-x').getAttribute('aria-invalid') === null && document.getElementById('value-crank-fulcrum-x').defaultValue === '0.9 in'");
        Assert.Contains("\"0.9 in\"", _demo.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_edit_in_an_editor_shows_at_once_and_what_is_being_typed_stays()
    {
        await using Visited visited = await chromium.Visit(_server, "/drive");
        await visited.Until(Ready);
        await visited.Page.EvaluateFunctionAsync("() => { const i = document.getElementById('value-rail-travel'); i.value = '2'; i.dispatchEvent(new Event('input', { bubbles: true })); }");
        _demo.Text = _demo.Text.Replace("fulcrum = [\"21.3 mm\"", "fulcrum = [\"22.2 mm\"", StringComparison.Ordinal);
        await visited.Until("() => document.getElementById('value-crank-fulcrum-x').value === '22.2 mm'");
        Assert.Equal("2", await visited.Page.EvaluateExpressionAsync<string>("document.getElementById('value-rail-travel').value"));
    }

    [Fact]
    public async Task Two_pages_that_edit_one_value_lose_nothing_and_ask()
    {
        await using Visited first = await chromium.Visit(_server, "/drive");
        await using Visited second = await chromium.Visit(_server, "/drive");
        await first.Until(Ready);
        await second.Until(Ready);
        await second.Page.EvaluateFunctionAsync("() => { const i = document.getElementById('value-crank-fulcrum-x'); i.value = '24 mm'; i.dispatchEvent(new Event('input', { bubbles: true })); }");
        await Type(first, "value-crank-fulcrum-x", "23 mm");
        await second.Until("() => document.querySelector('form[action=\"/undo\"] button').disabled === false");
        await second.Page.EvaluateFunctionAsync("() => document.getElementById('value-crank-fulcrum-x').form.requestSubmit()");
        await second.Until("() => document.querySelector('[data-part=standing] form')");
        Assert.Contains("The file has 23 mm, the other is 24 mm", await second.Text("[data-part=standing]"), StringComparison.Ordinal);
        await second.Page.ClickAsync("[data-part=standing] button[value=other]");
        await first.Until("() => document.getElementById('value-crank-fulcrum-x').value === '24 mm'");
        Assert.Contains("[\"24 mm\"", _demo.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_connection_that_drops_in_the_middle_of_a_drag_loses_nothing()
    {
        await using Visited visited = await chromium.Visit(_server, "/drive");
        await visited.Until(Ready);
        (decimal x, decimal y) = await visited.Middle("#grab");
        await visited.Page.Mouse.MoveAsync(x, y);
        await visited.Page.Mouse.DownAsync();
        await visited.Page.Mouse.MoveAsync(x + 5, y, new() { Steps = 3 });
        int port = _server.Address.Port;
        await _server.DisposeAsync();
        await visited.Until("() => document.documentElement.dataset.line === 'gone' && !document.getElementById('line').hidden");
        await visited.Page.Mouse.UpAsync();
        await visited.Until("() => document.getElementById('moved').textContent.includes('kept here')");
        _server = await PageServer.Start(_demo.File, port, TimeProvider.System);
        await visited.Until("() => document.getElementById('moved').textContent.startsWith('In the hand file')");
        Assert.DoesNotContain("fulcrum = [\"21.3 mm\", \"19 mm\"]", _demo.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_sent_without_a_connection_goes_in_when_the_program_is_back()
    {
        await using Visited visited = await chromium.Visit(_server, "/drive");
        await visited.Until(Ready);
        int port = _server.Address.Port;
        await _server.DisposeAsync();
        await visited.Until("() => document.documentElement.dataset.line === 'gone'");
        await Type(visited, "value-crank-fulcrum-x", "23 mm");
        await visited.Until("() => document.getElementById('line').textContent.includes('1 change is kept')");
        _server = await PageServer.Start(_demo.File, port, TimeProvider.System);
        await visited.Until("() => document.documentElement.dataset.line === 'open' && document.getElementById('line').hidden");
        Assert.Contains("[\"23 mm\"", _demo.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Arrow_keys_move_a_point_and_the_slider_plays_the_run()
    {
        await using Visited visited = await chromium.Visit(_server, "/drive");
        await visited.Until(Ready);
        await visited.Page.FocusAsync("#grab");
        await visited.Page.Keyboard.DownAsync("Shift");
        await visited.Page.Keyboard.PressAsync("ArrowRight");
        await visited.Page.Keyboard.UpAsync("Shift");
        await visited.Page.Keyboard.PressAsync("Enter");
        await visited.Until("() => document.getElementById('moved').textContent.includes('crank.fulcrum.x = 22.3 mm')");
        Assert.Contains("[\"22.3 mm\"", _demo.Text, StringComparison.Ordinal);
        await visited.Page.FocusAsync("#wrist");
        await visited.Page.Keyboard.PressAsync("Home");
        await visited.Until("() => document.getElementById('wrist-says').textContent === '0.0°'");
        Assert.Equal("No limit acts here.", await visited.Text("#drive-acting"));
        await visited.Page.ClickAsync("#play-run");
        await visited.Until("() => document.getElementById('drive-acting').textContent.includes('effort limit')");
    }

    [Fact]
    public async Task An_earlier_state_lies_under_the_present_one_as_a_ghost()
    {
        await using Visited visited = await chromium.Visit(_server, "/drive");
        await visited.Until(Ready);
        await Type(visited, "value-crank-fulcrum-x", "24 mm");
        await visited.Until("() => document.querySelectorAll('#drive-choices select[name=ghost] option').length === 2");
        await visited.Page.EvaluateFunctionAsync("() => { const s = document.querySelector('select[name=ghost]'); s.selectedIndex = 1; s.dispatchEvent(new Event('change', { bubbles: true })); }");
        await visited.Until("() => document.querySelector('#scene-drawing .ghost [data-layer=crank]')");
        await visited.Picture("drive-ghost");
    }

    private static async Task Type(Visited visited, string id, string text)
    {
        await visited.Page.EvaluateFunctionAsync("(id, text) => { const i = document.getElementById(id); i.focus(); i.value = text; i.dispatchEvent(new Event('input', { bubbles: true })); }", id, text);
        await visited.Page.Keyboard.PressAsync("Enter");
    }
}
