using Graspwright.Page.Hands;
using Graspwright.Page.Signals;
using Microsoft.AspNetCore.Components;

namespace Graspwright.Page.Pages;

/// <summary>Puts a component on the list of pages: a page is one file that carries this and inherits <see cref="PageBody"/>.</summary>
/// <param name="order">Its place along the life of a hand.</param>
/// <param name="address">Its address, one word.</param>
/// <param name="name">Its name in the list.</param>
/// <param name="verb">The verb whose answer stands at the address with <c>.json</c> behind it.</param>
[AttributeUsage(AttributeTargets.Class, Inherited = false)]
public sealed class WorkPageAttribute(int order, string address, string name, string verb) : Attribute
{
    /// <summary>Its place along the life of a hand.</summary>
    public int Order { get; } = order;

    /// <summary>Its address.</summary>
    public string Address { get; } = address;

    /// <summary>Its name.</summary>
    public string Name { get; } = name;

    /// <summary>The verb that it answers first.</summary>
    public string Verb { get; } = verb;

    /// <summary>Verbs that it answers below the first; each has an address of its own, <c>/address/verb.json</c>.</summary>
    public string[] Also { get; init; } = [];

    /// <summary>Name of its own script among <c>Scripts/</c>; empty = none.</summary>
    public string Script { get; init; } = "";

    /// <summary>How the name of a file that may be sent to the page ends.</summary>
    public string Takes { get; init; } = ".csv";
}

/// <summary>One look at a page.</summary>
/// <param name="Open">The open hand.</param>
/// <param name="Answers">What the verbs answer about it.</param>
/// <param name="Page">The page.</param>
/// <param name="Query">What stands behind the address.</param>
/// <param name="Now">When.</param>
public sealed record Visit(OpenHand Open, HandAnswers Answers, WorkPageAttribute Page, IReadOnlyDictionary<string, string> Query, DateTimeOffset Now)
{
    /// <summary>Ports at which a board may hang.</summary>
    public BoardLines Boards { get; init; } = BoardLines.None;

    /// <summary>A value behind the address, or another where there is none.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="otherwise">The other.</param>
    public string Asked(string name, string otherwise = "") => Query.TryGetValue(name, out string? value) && value.Length > 0 ? value : otherwise;
}

/// <summary>What was sent to a page's own action.</summary>
/// <param name="Values">Values by name, in order.</param>
/// <param name="Upload">Text of an uploaded file; <see langword="null"/> = none.</param>
public sealed record Sent(IReadOnlyList<KeyValuePair<string, string>> Values, string? Upload)
{
    /// <summary>The first value of a name; empty = none.</summary>
    /// <param name="name">The name.</param>
    public string this[string name] => Values.FirstOrDefault(v => v.Key == name).Value ?? "";

    /// <summary>Every value of a name.</summary>
    /// <param name="name">The name.</param>
    public IReadOnlyList<string> All(string name) => [.. Values.Where(v => v.Key == name).Select(v => v.Value)];
}

/// <summary>The body of a page.</summary>
public abstract class PageBody : ComponentBase
{
    /// <summary>The look at it.</summary>
    [Parameter]
    public required Visit Visit { get; set; }

    /// <summary>The open hand.</summary>
    protected OpenHand Open => Visit.Open;

    /// <summary>Does what one of the page's own forms asks.</summary>
    /// <param name="what">Which.</param>
    /// <param name="sent">What was sent.</param>
    /// <returns>What came of it; <see langword="null"/> = the page has no such form.</returns>
    public virtual Outcome? Act(string what, Sent sent) => null;

    /// <summary>Answers a question that the page's script asks over its line, in the order asked; newer questions may overtake.</summary>
    /// <param name="question">The question.</param>
    /// <param name="keep">What this line keeps between questions.</param>
    /// <returns>The reply as JSON; <see langword="null"/> = none.</returns>
    public virtual string? Reply(System.Text.Json.JsonElement question, IDictionary<string, object> keep) => null;

    /// <summary>A file of the page's own to be taken away, made when it is asked for.</summary>
    /// <param name="name">Its name.</param>
    /// <returns><see langword="null"/> = the page has no such file.</returns>
    public virtual Given? Give(string name) => null;
}

/// <summary>A file that is given.</summary>
/// <param name="Bytes">What is in it.</param>
/// <param name="Kind">Its media type.</param>
/// <param name="Name">Name under which it is kept; empty = it is shown or read by the page.</param>
public sealed record Given(byte[] Bytes, string Kind, string Name);

/// <summary>Every page, found by its mark.</summary>
public static class PageTable
{
    /// <summary>The pages in order, each with its component.</summary>
    public static IReadOnlyList<(WorkPageAttribute Page, Type Body)> All { get; } =
    [
        .. typeof(PageTable).Assembly.GetTypes()
            .Select(t => (Page: (WorkPageAttribute?)Attribute.GetCustomAttribute(t, typeof(WorkPageAttribute)), Body: t))
            .Where(p => p.Page is not null)
            .Select(p => (p.Page!, p.Body))
            .OrderBy(p => p.Item1.Order),
    ];

    /// <summary>A page by its address.</summary>
    /// <param name="address">The address.</param>
    public static (WorkPageAttribute Page, Type Body)? Find(string address)
    {
        foreach ((WorkPageAttribute page, Type body) in All)
        {
            if (page.Address == address)
            {
                return (page, body);
            }
        }

        return null;
    }
}
