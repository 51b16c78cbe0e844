namespace JobBoard.Web.Posting;

/// <summary>A field that could not be read: which, and what to type instead.</summary>
/// <param name="Field">The field's name in the form, such as <c>crew[0].person</c>.</param>
/// <param name="Words">What is wrong and how to put it right, in one sentence.</param>
public sealed record FieldFault(string Field, string Words);
