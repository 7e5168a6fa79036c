using Graspwright.Hand;
using Graspwright.Page.Serving;
using Graspwright.Page.Tests;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Search;

namespace Graspwright.Page.Browser.Tests;

[Collection("one browser")]
public sealed class SearchTests(Chromium chromium)
{
    private const string Found = "() => document.querySelector('#point [data-layer=front]')";

    [Fact]
    public async Task A_search_is_stopped_gone_on_with_after_the_program_ended_and_ends_as_if_it_never_stopped()
    {
        using DemoHand demo = new();
        PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        try
        {
            await using Visited visited = await chromium.Visit(server, "/search", 390, dark: true);
            await Begin(visited, "320");
            await visited.Until("() => /^[1-9]\\d* of 320 designs/.test(document.querySelector('[data-work=search] [data-far]')?.textContent ?? '')");
            await visited.Picture("search-goes-390-dark");
            await visited.Page.GoToAsync(new Uri(server.Address, "/strength").ToString());
            await visited.Until("() => document.querySelector('[data-part=works] [data-work=search] button')");
            await visited.Page.EvaluateExpressionAsync("document.querySelector('[data-part=works] [data-work=search] button').click()");
            await visited.Until("() => !document.querySelector('[data-work=search]')");
            await visited.Page.GoToAsync(new Uri(server.Address, "/search").ToString());
            await visited.Until("() => document.querySelector('form[action=\"/search/act/on\"]')");
            Assert.Contains("It was stopped before its end", await visited.Text("#part-search .sentence"), StringComparison.Ordinal);

            await server.DisposeAsync();
            server = await PageServer.Start(demo.File, 0, TimeProvider.System);
            await visited.Page.GoToAsync(new Uri(server.Address, "/search").ToString());
            await visited.Until("() => document.querySelector('form[action=\"/search/act/on\"] button')");
            await visited.Page.EvaluateExpressionAsync("document.querySelector('form[action=\"/search/act/on\"] button').click()");
            await visited.Until("() => document.querySelector('#part-search .sentence')?.textContent.includes('Of 320 designs')");

            HandReading reading = HandFile.Read(demo.File);
            SearchResult whole = Searching.Answer(new(HandEditor.Open(reading, demo.Folder)!) { File = demo.File, Name = reading.Hand!.Decisions.Searches[0].Name, Evaluations = 320 });
            using HttpClient client = new();
            Assert.Equal(JsonAnswer.Write(whole.Answer!), await client.GetStringAsync(new Uri(server.Address, "/search.json"), TestContext.Current.CancellationToken));
            Assert.DoesNotContain(visited.Complaints, c => !c.Contains("ERR_CONNECTION_REFUSED", StringComparison.Ordinal) && !c.Contains("WebSocket", StringComparison.Ordinal)); // the program was away for a while
        }
        finally
        {
            await server.DisposeAsync();
        }
    }

    [Fact]
    public async Task A_point_is_picked_from_the_front_says_why_and_goes_into_the_file()
    {
        using DemoHand demo = new();
        string before = demo.Text;
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/search");
        await Begin(visited, "160");
        await visited.Until(Found);
        Assert.Contains("the one to try first", await visited.Text("#point h2"), StringComparison.Ordinal);
        Assert.Equal(before, demo.Text);

        // The dot of number 2 is touched: what it is, and why, stands below.
        double[] dot = await visited.Page.EvaluateFunctionAsync<double[]>("() => { const c = document.querySelectorAll('#point [data-layer=front] circle')[1]; c.scrollIntoView({ block: 'center' }); const b = c.getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; }");
        await visited.Page.Mouse.ClickAsync((decimal)dot[0], (decimal)dot[1]);
        await visited.Until("() => document.querySelector('#point h2').textContent.startsWith('Number 2')");
        await visited.Picture("search-point-1440-light");
        Assert.Contains("Against the hand as it is", await visited.Text(".why"), StringComparison.Ordinal);
        await visited.Page.SelectAsync("#point-choice", "1");
        await visited.Until("() => document.querySelector('#point h2').textContent.startsWith('Number 1')");
        Assert.Empty(await visited.Barriers());

        await visited.Page.EvaluateExpressionAsync("document.querySelector('form[action=\"/search/act/take\"] button.strong').click()");
        await visited.Until("() => document.querySelector('form[action=\"/search/act/take\"]').textContent.includes('These values are in the hand file')");
        Assert.NotEqual(before, demo.Text);
        await visited.Page.EvaluateExpressionAsync("document.querySelector('form[action=\"/undo\"] button').click()");
        await visited.Until("() => document.querySelector('form[action=\"/search/act/take\"] button.strong')");
        Assert.Equal(before, demo.Text);
        Assert.Empty(visited.Complaints);
    }

    [Fact]
    public async Task A_number_that_is_none_is_answered_beside_its_field()
    {
        using DemoHand demo = new();
        await using PageServer server = await PageServer.Start(demo.File, 0, TimeProvider.System);
        await using Visited visited = await chromium.Visit(server, "/search");
        await Begin(visited, "many");
        await visited.Until("() => document.querySelector('form[action=\"/search/act/begin\"] [data-says]').textContent.includes('a whole number')");
        Assert.Null(await visited.Page.QuerySelectorAsync("[data-work=search]"));
    }

    private static async Task Begin(Visited visited, string designs) =>
        await visited.Page.EvaluateFunctionAsync("(n) => { const f = document.querySelector('form[action=\"/search/act/begin\"]'); f.elements.evaluations.value = n; f.requestSubmit(); }", designs);
}
