"""The pinned Moonshine Tiny in PyTorch, filled from its int8 ONNX, and the low-rank adapter on its decoder.

One scale and zero point a tensor: W[in, out] = (q - z) * s. The three convolutions are q * s **plus** a float zero point.
"""
import re
from pathlib import Path

import numpy as np
import onnx
import torch
from onnx import numpy_helper
from torch import nn
from transformers import MoonshineConfig, MoonshineForConditionalGeneration

RANK = 56
# The ONNX names of the decoder's maps, and transformers' names for them.
MAPS = {"dense": "o_proj", "up_proj": "fc1", "down_proj": "fc2"}


def _arrays(graph: onnx.GraphProto) -> dict[str, np.ndarray]:
    return {one.name: numpy_helper.to_array(one) for one in graph.initializer}


def _map(arrays: dict[str, np.ndarray], quantised: str) -> torch.Tensor:
    base = quantised.removesuffix("_quantized")
    weight = (arrays[quantised].astype(np.float32) - np.float32(arrays[f"{base}_zero_point"])) * arrays[f"{base}_scale"]
    return torch.from_numpy(weight.T.copy())


def _filled(nodes, arrays: dict[str, np.ndarray], prefix: str, side: str) -> dict[str, torch.Tensor]:
    found = {}
    for node in nodes:
        if node.op_type == "MatMulInteger":
            name = node.name.removesuffix("/MatMul_quant").removeprefix(prefix).strip("/").replace("/", ".")
            head, _, last = name.rpartition(".")
            found[f"model.{side}.{head}.{MAPS.get(last, last)}.weight"] = _map(arrays, node.input[1])
    return found


def load(folder: Path) -> MoonshineForConditionalGeneration:
    """The whole recogniser, float32, from `encoder_model.onnx` and `decoder_model_merged.onnx` in `folder`."""
    config = MoonshineConfig(
        vocab_size=32768, hidden_size=288, intermediate_size=1152, encoder_num_hidden_layers=6, decoder_num_hidden_layers=6,
        encoder_num_attention_heads=8, decoder_num_attention_heads=8, encoder_hidden_act="gelu", decoder_hidden_act="silu",
        partial_rotary_factor=0.9, rope_parameters={"rope_type": "default", "rope_theta": 10000.0, "partial_rotary_factor": 0.9},
        decoder_start_token_id=1, bos_token_id=1, eos_token_id=2, pad_token_id=2, max_position_embeddings=512, tie_word_embeddings=True)
    model = MoonshineForConditionalGeneration(config)
    encoder, decoder = onnx.load(folder / "encoder_model.onnx").graph, onnx.load(folder / "decoder_model_merged.onnx").graph
    state = _encoder(encoder) | _decoder(decoder)
    missing, unexpected = model.load_state_dict(state, strict=False)
    left = [name for name in missing if "proj_out" not in name and "inv_freq" not in name]
    if left or unexpected:
        raise ValueError(f"the weights do not fit: missing {left}, unexpected {unexpected}")
    model.tie_weights()
    return model.eval()


def _encoder(graph: onnx.GraphProto) -> dict[str, torch.Tensor]:
    arrays = _arrays(graph)
    state = _filled(graph.node, arrays, "/", "encoder")
    for name in ("conv1", "conv2", "conv3"):
        weight = arrays[f"{name}.weight_quantized"].astype(np.float32) * arrays[f"{name}.weight_scale"] + arrays[f"{name}.weight_zero_point"]
        state[f"model.encoder.{name}.weight"] = torch.from_numpy(weight)
    norm = {node.op_type: node.input for node in graph.node if node.name.startswith("/groupnorm/") and node.op_type in ("Mul", "Add")}
    state["model.encoder.groupnorm.weight"] = _vector(arrays, norm["Mul"])
    state["model.encoder.groupnorm.bias"] = _vector(arrays, norm["Add"])
    for name, value in arrays.items():
        if re.search(r"(layernorm|layer_norm)\.weight$|\.bias$", name) and value.ndim == 1:
            state[f"model.encoder.{name}"] = torch.from_numpy(value.copy())
    return state


def _vector(arrays: dict[str, np.ndarray], names) -> torch.Tensor:
    return torch.from_numpy(next(arrays[name] for name in names if name in arrays).reshape(-1).copy())


def _decoder(graph: onnx.GraphProto) -> dict[str, torch.Tensor]:
    arrays = _arrays(graph)
    branch = graph.node[0].attribute
    plain = next(one.g for one in branch if one.name == "else_branch")  # without a cache: every map is used
    state = _filled(plain.node, arrays, "/model/decoder", "decoder")
    for name, value in arrays.items():
        own = name.removesuffix("_merged_0")
        if re.search(r"norm\.weight$|\.bias$", own) and value.ndim == 1:
            state[own.replace("mlp.up_proj", "mlp.fc1").replace("mlp.down_proj", "mlp.fc2")] = torch.from_numpy(value.copy())
    base = "model.decoder.embed_tokens.weight_merged_0"
    embedding = (arrays[f"{base}_quantized"].astype(np.float32) - np.float32(arrays[f"{base}_zero_point"])) * arrays[f"{base}_scale"]
    state["model.decoder.embed_tokens.weight"] = torch.from_numpy(embedding.astype(np.float32))
    state["proj_out.weight"] = state["model.decoder.embed_tokens.weight"]
    return state


class LowRank(nn.Module):
    """A linear map with a trained addition: x W' + x A' B'. A is [rank, in], B is [out, rank], B starts at nought."""

    def __init__(self, base: nn.Linear):
        super().__init__()
        self.base = base
        self.a = nn.Parameter(torch.randn(RANK, base.in_features) / base.in_features ** 0.5)
        self.b = nn.Parameter(torch.zeros(base.out_features, RANK))

    def forward(self, x: torch.Tensor) -> torch.Tensor:
        return self.base(x) + (x @ self.a.T) @ self.b.T


def adapt(model: MoonshineForConditionalGeneration) -> dict[str, LowRank]:
    """Puts the adapter on all 60 maps of the decoder's layers and freezes the rest. Keys are the ONNX node names without ends."""
    for parameter in model.parameters():
        parameter.requires_grad_(False)
    names = {theirs: ours for ours, theirs in MAPS.items()}
    made: dict[str, LowRank] = {}
    for i, layer in enumerate(model.model.decoder.layers):
        for part in ("self_attn", "encoder_attn", "mlp"):
            home = getattr(layer, part)
            for child, linear in [pair for pair in home.named_children() if isinstance(pair[1], nn.Linear)]:
                made[f"layers.{i}/{part}/{names.get(child, child)}"] = adapted = LowRank(linear)
                setattr(home, child, adapted)
    if len(made) != 60:
        raise ValueError(f"expected 60 maps, found {len(made)}")
    return made
