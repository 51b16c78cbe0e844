using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace JobBoard.Web.Pages.Missing;

/// <summary>What a page says in words where it would answer with a bare number.</summary>
internal static class MissingWords
{
    private static readonly object Key = new();

    /// <summary>Answers 404; the page that is shown then says these words.</summary>
    public static IResult Answer(HttpContext http, string words)
    {
        http.Items[Key] = words;
        return Results.StatusCode(StatusCodes.Status404NotFound);
    }

    /// <summary>Title and words for the answer's number.</summary>
    public static (string Title, string Words) Of(HttpContext http)
    {
        var code = http.Features.Get<IStatusCodeReExecuteFeature>()?.OriginalStatusCode ?? StatusCodes.Status404NotFound;
        return code switch
        {
            StatusCodes.Status404NotFound => ("Not here", http.Items[Key] as string ?? "There is nothing at this address. A link may be mistyped, or what it led to is gone."),
            StatusCodes.Status403Forbidden => ("Not for you", "Your position does not open this screen. The owner says who may."),
            StatusCodes.Status400BadRequest => ("Not understood", "What was sent was not whole, or the page had been open for too long. Go back, load the page again and send it again."),
            _ => ("Not answered", $"The board could not answer this ({code}). Go back and try again."),
        };
    }

    /// <summary>Gives the words of a page that found nothing to the page that says so.</summary>
    internal sealed class Filter : IAlwaysRunResultFilter
    {
        /// <inheritdoc/>
        public void OnResultExecuting(ResultExecutingContext context)
        {
            if (context.Result is not NotFoundObjectResult { Value: string words }) return;
            context.HttpContext.Items[Key] = words;
            context.Result = new NotFoundResult();
        }

        /// <inheritdoc/>
        public void OnResultExecuted(ResultExecutedContext context)
        {
        }
    }
}
