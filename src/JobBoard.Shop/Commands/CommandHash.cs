using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using JobBoard.Domain.Commands;

namespace JobBoard.Shop.Commands;

/// <summary>What makes two sendings of one command id the same command.</summary>
public static class CommandHash
{
    /// <summary>SHA-256 over actor, kind, the canonical body (its target is part of it) and the version seen.</summary>
    public static byte[] Of(Envelope envelope)
    {
        var seen = envelope.Seen?.ToString(CultureInfo.InvariantCulture) ?? "-";
        var text = string.Join('\n', envelope.Actor, CommandJson.KindOf(envelope.Command), seen, CommandJson.Canonical(envelope.Command));
        return SHA256.HashData(Encoding.UTF8.GetBytes(text));
    }
}
