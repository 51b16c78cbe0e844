namespace JobBoard.Web.Pages.Plans;

/// <summary>What the plan screen is opened on.</summary>
/// <param name="Title">The title.</param>
/// <param name="Note">A line beside it.</param>
/// <param name="Car">The car's id, or nothing.</param>
/// <param name="Template">The template's id, or nothing.</param>
/// <param name="Back">Where it leads when all is done.</param>
public sealed record PlanEditorView(string Title, string Note, string? Car, string? Template, string Back);
