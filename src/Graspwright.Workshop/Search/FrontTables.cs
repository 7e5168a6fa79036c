using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Search;

/// <summary>Tables of a search for other programs.</summary>
public static class FrontTables
{
    /// <summary>Every point of the front: aims, limits, values.</summary>
    /// <param name="study">The search.</param>
    public static Table Whole(SearchStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return SearchAnswer.FrontTable(study, All: true);
    }
}
