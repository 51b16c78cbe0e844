using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.SignalR;

namespace JobBoard.Web.Live;

/// <summary>The live feed. It takes no writes: a page says which fragments it shows and gets them, now and whenever they change.</summary>
[Authorize(Policies.Feed)]
public sealed class LiveHub(LivePublisher publisher, Fragments fragments, Viewers viewers, Doorkeeper door) : Hub
{
    /// <summary>Most fragments one page may watch.</summary>
    public const int MostFragments = 64;

    private const string Watched = "watched";

    /// <summary>Joins the audiences of the fragments of a page and gives each as it is now. Ids one may not see are left out.</summary>
    public async Task<JoinAnswer> Join(string[] ids)
    {
        var viewer = viewers.Of(Context.User!);
        var joined = Joined();
        var now = new List<FragmentPush>();
        foreach (var text in ids.Distinct(StringComparer.Ordinal).Take(MostFragments))
        {
            if (FragmentId.Read(text) is not { } id || !fragments.Has(id) || !id.Audience.Admits(viewer)) continue;
            if (joined.Add(id)) await Groups.AddToGroupAsync(Context.ConnectionId, id.ToString());
            else publisher.Leave(id);
            now.Add(await publisher.Join(id, Context.ConnectionId));
        }

        return new JoinAnswer(publisher.Beat, now);
    }

    /// <inheritdoc/>
    public override Task OnConnectedAsync()
    {
        door.Let(Context);
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public override Task OnDisconnectedAsync(Exception? exception)
    {
        door.Left(Context);
        foreach (var id in Joined()) publisher.Leave(id);
        return Task.CompletedTask;
    }

    private HashSet<FragmentId> Joined()
    {
        if (Context.Items.TryGetValue(Watched, out var kept)) return (HashSet<FragmentId>)kept!;
        var joined = new HashSet<FragmentId>();
        Context.Items[Watched] = joined;
        return joined;
    }
}

/// <summary>What joining gives: the heartbeat and every fragment as it is now.</summary>
public sealed record JoinAnswer(Beat Beat, IReadOnlyList<FragmentPush> Fragments);
