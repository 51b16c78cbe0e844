using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Commands;
using JobBoard.Shop.Commands;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Antiforgery;

namespace JobBoard.Web.Posting;

/// <summary>Takes a posted form to the shop: token, sender, position, fields, PIN, and then the one door everything goes through.</summary>
public sealed class CommandDesk(ShopRunner runner, ShopClock clock, Viewers viewers, SignInDesk signIn, TemplateBook templates, IAntiforgery antiforgery)
{
    // What a phone typed a day ago in a dead spot still counts; more than that is a mistake.
    private static readonly TimeSpan LongestAgo = TimeSpan.FromDays(2);

    /// <summary>Sends the command a form spells.</summary>
    public async Task<Posted> Take(string kind, HttpContext http)
    {
        if (await AtTheDoor(CommandJson.TypeOf(kind), http).ConfigureAwait(false) is { } refused) return refused;
        var form = await http.Request.ReadFormAsync().ConfigureAwait(false);
        var (command, faults) = new CommandBinder(ShopZone.Of(runner.State), templates.Find).Bind(kind, LeftToTheBoard.Complete(kind, form, runner.State));
        return await Take(command, faults, form, http).ConfigureAwait(false);
    }

    /// <summary>Sends a command that a page made of a form of its own; number, version seen, PIN and token come from that form's seal.</summary>
    public async Task<Posted> Send(Command command, HttpContext http)
    {
        if (await AtTheDoor(command.GetType(), http).ConfigureAwait(false) is { } refused) return refused;
        return await Take(command, [], await http.Request.ReadFormAsync().ConfigureAwait(false), http).ConfigureAwait(false);
    }

    private async Task<Posted.NotTaken?> AtTheDoor(Type? type, HttpContext http)
    {
        if (!await antiforgery.IsRequestValidAsync(http).ConfigureAwait(false))
            return new Posted.NotTaken(400, "stale", "This page is too old to send from. Nothing was done. Load the page again and repeat it.");
        if (viewers.PersonOf(http.User) is not { } viewer)
            return new Posted.NotTaken(401, "signed-out", "You are signed out. Nothing was done. Sign in and repeat it.");
        return type is not null && !MayPost.May(viewer.Person.Position, type)
            ? new Posted.NotTaken(403, "not-yours", $"Only a {MayPost.LeastFor(type).ToString().ToLowerInvariant()} does this. Nothing was done.")
            : null;
    }

    private async Task<Posted> Take(Command? command, ImmutableArray<FieldFault> faults, IFormCollection form, HttpContext http)
    {
        var viewer = viewers.PersonOf(http.User)!;
        return Envelope(command, faults, form, viewer, out var envelope) ?? await Ask(http, form, viewer, envelope!).ConfigureAwait(false);
    }

    private Posted.Invalid? Envelope(Command? command, ImmutableArray<FieldFault> faults, IFormCollection form, PersonViewer viewer, out Envelope? envelope)
    {
        envelope = null;
        var zone = ShopZone.Of(runner.State);
        if (!Guid.TryParse(form["command"], out var id) || id == Guid.Empty)
            faults = faults.Add(new FieldFault("command", "The form came without its number. Load the page again."));
        var occurred = Occurred(form, zone);
        if (occurred is null) faults = faults.Add(new FieldFault("occurred", "When it happened could not be read. Type it as 2026-11-24T14:07, not more than two days back."));
        if (command is null || !faults.IsEmpty) return new Posted.Invalid(faults);
        envelope = new(id, viewer.Id, occurred!.Value, Seen(form), command);
        return null;
    }

    private async Task<Posted> Ask(HttpContext http, IFormCollection form, PersonViewer viewer, Envelope envelope)
    {
        if (MayPost.AsksFreshPin(envelope.Command.GetType()) && !signIn.IsFresh(viewer))
        {
            if (string.IsNullOrEmpty(form["pin"])) return new Posted.PinAsked(null);
            if (await signIn.SignIn(http, viewer.Id, form["pin"]).ConfigureAwait(false) is { } wrong) return new Posted.PinAsked(wrong);
        }

        return await runner.Send(envelope).ConfigureAwait(false) switch
        {
            Outcome.Accepted accepted => new Posted.Done(accepted.Last ?? runner.State.Seq),
            Outcome.Refused { IsBadInput: true } bad => new Posted.Invalid([.. bad.Reasons.Select(r => new FieldFault(r.About ?? "", runner.State.Say(r.Words)))]),
            Outcome.Refused refused => new Posted.Refused(refused.Reasons),
            Outcome.OtherContent => new Posted.NotTaken(409, "stale", "This form was sent before with something else in it. Nothing more was done. Load the page again."),
            Outcome.Unavailable none => new Posted.NotTaken(503, "unavailable", none.Words),
            var other => throw new InvalidOperationException($"Unknown outcome {other}."),
        };
    }

    // A device's clock may be wrong, so scripts say how long ago it was; a person says when, in the shop's time.
    private DateTimeOffset? Occurred(IFormCollection form, TimeZoneInfo zone)
    {
        var now = runner.Now;
        if (form["occurred"].ToString() is { Length: > 0 } typed)
            return FieldScalar.Parse(typed, zone) is { } at && at > now - LongestAgo ? at : null;
        if (form["ago"].ToString() is not { Length: > 0 } ago) return now;
        return long.TryParse(ago, NumberStyles.None, CultureInfo.InvariantCulture, out var ms) && ms <= LongestAgo.TotalMilliseconds ? now.AddMilliseconds(-ms * clock.Pace) : null;
    }

    private static long? Seen(IFormCollection form) =>
        long.TryParse(form["seen"], NumberStyles.None, CultureInfo.InvariantCulture, out var seen) ? seen : null;
}
